// @ts-check
// Starts the page: opens the journal, wakes the engine, begins to share, and hands all of it to the screens.

import { hearOffer } from "./device/offer.js";
import { Engine } from "./engine/client.js";
import { Kept } from "./engine/kept.js";
import { Journal } from "./journal/journal.js";
import { callLaptop, codeBrought, pair, takeCode } from "./journal/laptop.js";
import { Sync } from "./journal/sync.js";
import { mount } from "./screens/main.js";
import { Update } from "./update.js";
import { say } from "./words/words.js";

/**
 * All that the screens may use. Nothing here computes: figures come from `engine`, words of people go to `journal`.
 * `anotherEngine` starts one more, for work that takes long and may be ended.
 * `kept` are answers of the last time; `laptop` is the way to it, and into it.
 * @typedef {{ engine: Engine, anotherEngine: () => Engine, kept: Kept, journal: Journal, sync: Sync, update: Update, laptop: object }} Services
 */

const { build = "", runtime = "" } = document.documentElement.dataset;
const root = /** @type {HTMLElement} */ (document.getElementById("page"));

/** A journal opens in a tenth of a second; after this long, in ms, the person is told. */
const PATIENCE = 5000;

async function start() {
  takeCode();
  hearOffer();
  const update = new Update();
  // The engine is sent off first: it takes longest to wake, and needs the journal only when it has.
  const waiting = setTimeout(() => show(say("start-no-answer")), PATIENCE);
  const opening = Journal.open();
  opening.catch(() => clearTimeout(waiting));
  const keeping = Kept.open(build);
  const anotherEngine = () => new Engine({ build, runtime, entries: async () => (await opening).entries() });
  const engine = anotherEngine();
  update.quiet = () => engine.settled();
  engine.onState((state) => performance.mark(`engine ${state}`)); // What the bench reads, and a profiler shows.
  const journal = await opening;
  clearTimeout(waiting);
  root.replaceChildren();
  journal.onChange((fresh) => engine.tell(fresh));
  journal.onReplaced(() => engine.restart());
  const sync = new Sync({ journal, heard: (theirs) => theirs !== build && update.check() });
  document.addEventListener("visibilitychange", () => {
    // Phones end the workers of a page in the background; the person who comes back should not have to know.
    if (document.visibilityState === "visible" && engine.state.startsWith("failed")) engine.restart();
  });
  mount(root, { engine, anotherEngine, kept: await keeping, journal, sync, update, laptop: { callLaptop, codeBrought, pair } });
}

/**
 * Without the journal nothing could be saved, and a page that looks as if it did would be worse than none.
 * @param {unknown} error
 */
function refuse(error) {
  console.error(error);
  show(say("start-refused", { why: String(error) }));
}

/** Alone on the page, before there is a screen. @param {string} text */
function show(text) {
  const words = document.createElement("p");
  words.setAttribute("role", "alert");
  words.textContent = text;
  root.replaceChildren(words);
}

start().catch(refuse);
