// @ts-check
// What the page says, by key. The sentences stand in the folder of their language, a file for each room of the page, in the
// syntax of Project Fluent; another language is another folder with the same keys.
import { FluentBundle } from "../vendor/fluent/bundle.js";
import { FluentResource } from "../vendor/fluent/resource.js";

const LANGUAGE = document.documentElement.lang;
/** What the first paint says, and whatever is imported by then. */
const FIRST = ["shared", "frame", "program", "survey"];
const OTHERS = ["boards", "cover", "house", "pad", "photos", "pieces", "settings", "sums", "supplies"];

/** What lengths are shown in, for a sentence that gives a measure for an example: { MEASURE() -> [millimeters] … }. */
let measure = "inches";

/** @param {string} lengths */
export function measureIn(lengths) {
  measure = lengths;
}

// Marks that keep two directions of writing apart would be found in what is copied, read aloud and searched.
const bundle = new FluentBundle(LANGUAGE, { useIsolating: false, functions: { MEASURE: () => measure } });
await take(FIRST);

/** @type {Promise<void> | null} */
let others = null;

/** When all sentences are here; asked for once more after they could not be had. */
export function allWords() {
  others ??= take(OTHERS).catch((error) => {
    others = null;
    throw error;
  });
  return others;
}

/** @param {string[]} rooms */
async function take(rooms) {
  for (const text of await Promise.all(rooms.map(read))) bundle.addResource(new FluentResource(text));
}

/** @param {string} room */
async function read(room) {
  const answer = await fetch(new URL(`${LANGUAGE}/${room}.ftl`, import.meta.url));
  if (!answer.ok) throw new Error(`no words for ${room}: ${answer.status}`);
  return answer.text();
}

/** @param {string} key */
function patternOf(key) {
  const [id, attribute] = key.split(".");
  const message = bundle.getMessage(id);
  return attribute ? message?.attributes[attribute] : message?.value;
}

/**
 * The sentence of a key, or of `key.attribute`; what is missing is seen as its key, and is no reason for a blank page. It is
 * told the console, where tests listen: of a key that is computed only the page knows whether it is there.
 * @param {string} key @param {Record<string, string | number>} [values] @returns {string}
 */
export function say(key, values) {
  const pattern = patternOf(key);
  /** @type {any[]} */
  const wrong = pattern ? [] : ["missing"];
  const said = pattern ? bundle.formatPattern(pattern, values, wrong) : key;
  if (wrong.length) console.error(`No words for ${key}: ${wrong.join()}`);
  return said;
}

/**
 * What was handed on by who has no page to speak on: a key, or an error with one, and the values it names. What another
 * program says of itself has no key, and is repeated.
 * @param {any} told @returns {string}
 */
export function sayTold(told) {
  const key = told?.key ?? String(told?.message ?? told);
  return patternOf(key) ? say(key, told?.values) : key;
}

/** Set about a value that is no text; no keyboard writes it, and no sentence has it. */
const SLOT = "\u0001";

/**
 * A sentence with elements in it, each put where the sentence names it.
 * @param {string} key @param {Record<string, any>} elements @param {Record<string, string | number>} [values] @returns {any[]}
 */
export function sayWith(key, elements, values = {}) {
  const slots = Object.keys(elements).map((name) => [name, SLOT + name + SLOT]);
  const parts = say(key, { ...values, ...Object.fromEntries(slots) }).split(SLOT);
  return parts.map((part, place) => (place % 2 ? elements[part] : part));
}

/** Several things of which one will do: "9, 10 or 12". @param {(string | number)[]} things */
export const anyOf = (things) => new Intl.ListFormat(LANGUAGE, { type: "disjunction" }).format(things.map(String));

/** Several things that all count: "the sink, the tub and the door". @param {(string | number)[]} things */
export const allOf = (things) => new Intl.ListFormat(LANGUAGE, { type: "conjunction" }).format(things.map(String));
