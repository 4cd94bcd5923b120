// @ts-check
// A setting as the screen says it, by its name in the journal: what it is called, what it is for, what one may choose.
import { say } from "../words/words.js";

/**
 * A row is [name, label, its hint when that is shown], with "plain" after it where what is written is no length, and the
 * unit of a bare number where lengths are in millimeters; a pick is [name, legend, choices]; a table is [name, label,
 * what `Rows` is to be told].
 * @typedef {[string, string, () => string, string?, string?]} Row
 * @typedef {[string, string, string[][]]} Pick
 * @typedef {[string, string, {words: string, of: string, cells: Cell[]}]} Table
 */

/**
 * A cell is [name in the journal, words on the screen, keyboard, what stands in its place where nothing is written].
 * The first of a table that has a "must" for its fifth is the one that a row is known by. The sixth is LENGTH, or the
 * unit of a bare number where lengths are in millimeters.
 * @typedef {string[]} Cell
 */
export const LENGTH = "length";

/** @type {Cell[]} */
const BOARDS = [
  ["length", say("cell-length"), "text", "", "must", LENGTH],
  ["price", say("cell-price"), "decimal", "0"],
  ["limit", say("cell-many"), "numeric"],
];
/** What a row of boards has besides, where they are of any profile. @type {Cell} */
const PROFILE = ["profile", say("cell-profile"), "text", ""];

/** A name as it stands in a key, where a dot leads to an attribute and a space ends it. @param {string} name */
const keyOf = (name) => name.replaceAll(/[. ]/g, "-");

/**
 * One of a few. @param {string} name @param {string[]} values @param {string} [said] where it is called otherwise here
 * @param {string} [of] whose choices these are, where several settings have the same @returns {Pick}
 */
export const pick = (name, values, said = name, of = said) => [
  name,
  say(`setting-${keyOf(said)}`),
  values.map((value) => [value, say(`setting-${keyOf(of)}.${keyOf(value)}`)]),
];

/** Yes or no. @param {string} name @param {string[]} [more] what else it may be */
export const yesOrNo = (name, more = []) => pick(name, ["yes", "no", ...more], name, "wanted");

/** How a molding is joined in inside corners. @param {string} name @param {string[]} [values] */
export const inside = (name, values = ["cope", "miter", "butt"]) => pick(name, values, name, "inside");

/** A length. @param {string} name @param {string} [said] where it is called otherwise here @returns {Row} */
export const lengthRow = (name, said = name) => [
  name,
  say(`setting-${keyOf(said)}`),
  () => say(`setting-${keyOf(said)}.hint`),
];

/** What is no length. @param {string} name @param {string} [unit] of a bare number, where that is metric @returns {Row} */
export const plainRow = (name, unit) => {
  const [, label, hint] = lengthRow(name);
  return [name, label, hint, "plain", unit];
};

/** @param {string} name @param {Cell[]} cells @param {string} [words] @param {string} [of] @returns {Table} */
export const table = (name, cells, words = keyOf(name), of = "") => [
  name,
  say(`table-${words}.title`, { of }),
  { words, of, cells },
];

/** Boards of one profile. @param {string} name @returns {Table} */
export const boards = (name) => table(name, BOARDS, "boards", say(`setting-${keyOf(name)}`));

/** Boards of any profile that has no list of its own. @param {string} name @returns {Table} */
export const boardsOfAny = (name) => table(name, [PROFILE, ...BOARDS]);
