import { effect } from "@preact/signals";
import { perform, shared, steerElsewhere, told, type Doing, type Shared, type Told } from "./session";

/** What the two windows of a lesson say to each other; nothing leaves this machine. */
type Said = { say: "hello" } | { say: "told"; told: Told } | { say: "shared"; shared: Shared } | { say: "do"; doing: Doing };

const parameter = "presenter";
/** The name of the lesson that this window presents; null: it is no presenter's window. */
export const presents = new URLSearchParams(location.search).get(parameter);

const channelOf = (name: string) => new BroadcastChannel(`forecourse lesson ${name}`);
const name = Math.random().toString(36).slice(2);

/** Keeps presenter's windows up to date, and does what is done in them, until what it gives is called. */
export function tellPresenter(): () => void {
  const channel = channelOf(name);
  const say = (said: Said) => channel.postMessage(said);
  const tell = effect(() => say({ say: "told", told: told.value }));
  const share = effect(() => say({ say: "shared", shared: shared.value }));
  channel.onmessage = ({ data }: MessageEvent<Said>) => {
    if (data.say === "do") perform(data.doing);
    if (data.say !== "hello") return;
    say({ say: "told", told: told.peek() });
    say({ say: "shared", shared: shared.peek() });
  };
  return () => {
    tell();
    share();
    channel.close();
  };
}

/** Opens the presenter's window; false: the browser kept it shut. */
export function openPresenter(): boolean {
  const address = new URL(location.href);
  address.search = `?${parameter}=${name}`;
  address.hash = "";
  return window.open(address.href, `forecourse ${name}`, "popup,width=1100,height=760") !== null;
}

/** In a presenter's window: shows what the lesson's window tells, and hands on what is done. */
export function followLesson(of: string) {
  const channel = channelOf(of);
  const say = (said: Said) => channel.postMessage(said);
  channel.onmessage = ({ data }: MessageEvent<Said>) => {
    if (data.say === "told") told.value = data.told;
    if (data.say === "shared") shared.value = data.shared;
  };
  steerElsewhere((doing) => say({ say: "do", doing }));
  say({ say: "hello" });
}
