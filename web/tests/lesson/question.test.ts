import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { lesson, questionOf, replayOf, sceneOf } from "./fixture";

// A page of the browser says whether little motion is asked for; here there is none.
vi.stubGlobal("matchMedia", () => ({ matches: true }));
const session = await import("../../src/state/lesson/session");
const { act, openLesson, perform, pageQuestions, question, replaying, shared, tally, tallyOf, told } = session;
const { answerWords } = await import("../../src/panels/lesson/Question");

const order = questionOf("order", "drop", {
  form: "order",
  options: ["pump stops", "groove breaks", "line drains"].map((words) => ({ words, words_si: words, right: false, why: null })),
  order: [1, 0, 2],
});
const asked: object[] = [];
let ended = 0;
function answer(want: { failure?: string }): unknown {
  asked.push(want);
  if (want.failure === "sump-fire") throw new Error("the station has no sump");
  if (want.failure) return replayOf(sceneOf("a", false), sceneOf("b", true));
  return { questions: [questionOf("choice", "drop"), order], left_out: [] };
}
const host = { station: "Hollin Gap", ask: async <A>(want: object) => answer(want) as A, end: () => void ++ended };
const settle = () => new Promise((done) => setTimeout(done, 0));

beforeEach(async () => {
  told.value = { ...told.value, station: "", lesson: null };
  asked.length = 0;
  openLesson(host, lesson);
  await settle();
});
afterEach(() => act({ do: "close" }));

describe("a question", () => {
  test("comes from the engine, once for the whole lesson", () => {
    expect(asked).toEqual([{ study: "lesson", questions: 500, seed: 1 }]);
    expect(pageQuestions.value.map((q) => q.question)).toEqual(["choice", "order"]);
  });
  test("keeps its tally while others are shown", () => {
    act({ do: "ask" });
    tally({ do: "type", text: "9" });
    act({ do: "question" });
    expect(question.value?.question).toBe("order");
    act({ do: "question" });
    expect(question.value && tallyOf(question.value).counts).toEqual([9, 0, 0]);
  });
  test("of an order is told by the letters it was shown with", () => {
    expect(answerWords(order)).toBe("B groove breaks; A pump stops; C line drains");
  });
  test("of a choice is told by its letter", () => expect(answerWords(questionOf("q", "drop"))).toBe("B: two"));
});

describe("a failure", () => {
  test("is asked for once, and shown when it is there", async () => {
    act({ do: "on" });
    act({ do: "failure", failure: "drive-off" });
    expect(replaying.value?.replay).toBeNull();
    await settle();
    expect(replaying.value?.replay?.scenes).toHaveLength(2);
    act({ do: "close" });
    expect(replaying.value).toBeNull();
    act({ do: "failure", failure: "drive-off" });
    await settle();
    expect(replaying.value?.replay?.scenes).toHaveLength(2);
    expect(asked).toHaveLength(2);
  });
  test("that cannot be shown says why", async () => {
    act({ do: "failure", failure: "sump-fire" });
    await settle();
    expect(replaying.value?.error).toBe("the station has no sump");
  });
});

test("a lesson of the same station goes on where it was", () => {
  act({ do: "last" });
  openLesson(host, { ...lesson });
  expect(shared.value.place.page).toBe(3);
  openLesson({ ...host, station: "Another" }, lesson);
  expect(shared.value.place.page).toBe(0);
});

test("units change for all of it, and it ends by its host", () => {
  perform({ of: "units" });
  expect(shared.value.units).toBe("si");
  perform({ of: "units" });
  perform({ of: "end" });
  expect(ended).toBe(1);
});
