// Checks finished reports: node check.mjs FOLDER/report.html ...
// Each must be under 1 MB, ask nobody for anything, be valid HTML, have no axe violation on a wide page, on a phone,
// in the dark and for print, and not be wider than the page.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { HtmlValidate } from 'html-validate';
import { chromium } from 'playwright-core';

const largest = 1_000_000; // bytes
const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const views = [
  { name: 'wide', width: 1440, colorScheme: 'light', media: 'screen' },
  { name: 'wide, dark', width: 1440, colorScheme: 'dark', media: 'screen' },
  { name: 'phone', width: 390, colorScheme: 'light', media: 'screen' },
  { name: 'phone, dark', width: 390, colorScheme: 'dark', media: 'screen' },
  { name: 'print', width: 720, colorScheme: 'light', media: 'print' },
];

const validator = new HtmlValidate({
  extends: ['html-validate:recommended'],
  rules: {
    // Matters of taste, or of house style, not of validity.
    'long-title': 'off',
    'no-trailing-whitespace': 'off',
    'doctype-style': 'off',
    'void-style': 'off',
    'prefer-native-element': 'off', // a box that scrolls sideways is a named region, not a section
    'tel-non-breaking': 'off',
    'no-redundant-role': 'off',
  },
});

/** Places in a text where something from outside is asked for. */
function outside(text) {
  const patterns = [/<script\b/gi, /<link\b/gi, /<iframe\b/gi, /@import/gi, /\b(?:src|srcset)\s*=/gi, /url\(\s*['"]?\s*https?:/gi,
    /<[^>]+\bhref\s*=\s*["']?https?:/gi];
  return patterns.flatMap((p) => text.match(p) ?? []);
}

async function validity(file) {
  const report = await validator.validateFile(file);
  return report.results.flatMap((r) => r.messages).map((m) => `${m.line}:${m.column} ${m.ruleId}: ${m.message}`);
}

/** axe in one view; what was asked for over the network; whether the page is wider than its window. */
async function look(browser, file, view) {
  const context = await browser.newContext({ viewport: { width: view.width, height: 1000 }, colorScheme: view.colorScheme, bypassCSP: true });
  const page = await context.newPage();
  await page.emulateMedia({ media: view.media, colorScheme: view.colorScheme });
  const asked = [];
  page.on('request', (r) => { if (!r.url().startsWith('file:') && !r.url().startsWith('data:')) asked.push(r.url()); });
  await page.goto(pathToFileURL(resolve(file)).href);
  await page.evaluate(axeSource);
  const result = await page.evaluate(() => window.axe.run(document, { resultTypes: ['violations'] }));
  const wider = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  await context.close();
  const faults = result.violations.map((v) => `axe ${v.id}: ${v.help} (${v.nodes.length}): ${v.nodes[0].html.slice(0, 160)}`);
  if (asked.length) faults.push(`asks for ${asked.join(', ')}`);
  if (wider > 0 && view.media === 'screen') faults.push(`${wider} px wider than the page`);
  return { faults, passes: result.passes.length };
}

const files = process.argv.slice(2);
const executablePath = process.env.FORECOURSE_BROWSER ?? '/usr/bin/chromium';
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
let wrong = 0;
for (const file of files) {
  const text = readFileSync(file, 'utf8');
  const bytes = Buffer.byteLength(text);
  const faults = [];
  if (bytes >= largest) faults.push(`${bytes} bytes, the most is ${largest}`);
  faults.push(...outside(text).map((what) => `asks for something from outside: ${what}`), ...(await validity(file)));
  let passes = 0;
  for (const view of views) {
    const seen = await look(browser, file, view);
    passes += seen.passes;
    faults.push(...seen.faults.map((fault) => `${view.name}: ${fault}`));
  }
  console.log(`${file}: ${Math.round(bytes / 1000)} kB, ${passes} axe checks passed in ${views.length} views, ${faults.length} faults`);
  for (const fault of faults) console.log(`  ${fault}`);
  wrong += faults.length;
}
await browser.close();
process.exit(wrong ? 1 : 0);
