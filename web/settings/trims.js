// @ts-check
// What can be set, group by group: each by its name in the journal. Names, no figures; the words are in the catalog.
import { say } from "../words/words.js";
import { boards, boardsOfAny, inside, pick, plain, row, wanted } from "./said.js";
import { SUPPLIES } from "./supplies.js";
import { THINGS } from "./things.js";

/**
 * `ofWindows`: of no other opening.
 * @typedef {{key?: string, title: string, ofWindows?: boolean, picks?: import("./said.js").Pick[],
 *   rows?: import("./said.js").Row[], tables?: import("./said.js").Table[]}} Group
 */

/** @type {Record<string, Group>} */
const BASE = {
  base: {
    title: say("group-base"),
    picks: [
      wanted("base.wanted"),
      inside("base.inside"),
      pick("base.floor", ["follow", "scribe", "taper"]),
      pick("bow.beyond", ["shim", "scribe"]),
      pick("scarf.place", ["plan", "even", "offcut"]),
    ],
    rows: [row("base.height"), row("base.thickness"), row("bow.spring"), plain("light.from"), plain("base.scarf")],
    tables: [boards("base.stock")],
  },
};

/** What goes round an opening: these one opening may differ in from its room. @type {Record<string, Group>} */
const OPENINGS = {
  casing: {
    title: say("group-casing"),
    picks: [wanted("casing.wanted", ["none"]), pick("head", ["mitered", "butted"])],
    rows: [
      row("casing.width"),
      row("casing.thickness"),
      row("reveal"),
      row("casing.head_width"),
      row("casing.overhang"),
      row("casing.clearance"),
    ],
    tables: [boards("casing.stock"), boards("casing.head_stock")],
  },
  plinth: {
    title: say("group-plinth"),
    rows: [row("plinth.height"), row("plinth.width"), row("plinth.thickness")],
    tables: [boards("plinth.stock")],
  },
  dressed: {
    title: say("group-dressed"),
    rows: [
      row("block.size"),
      row("block.thickness"),
      row("fillet.thickness"),
      row("fillet.overhang"),
      row("head_cap.thickness"),
      row("head_cap.overhang"),
      row("backband.width"),
      row("backband.thickness"),
    ],
    tables: [boards("block.stock"), boards("fillet.stock"), boards("head_cap.stock"), boards("backband.stock")],
  },
  window: {
    title: say("group-window"),
    ofWindows: true,
    picks: [pick("window.style", ["stool", "picture"]), wanted("apron.wanted")],
    rows: [row("stool.thickness"), row("stool.horn"), row("apron.width"), row("apron.thickness")],
    tables: [boards("stool.stock"), boards("apron.stock")],
  },
  extension: {
    title: say("group-extension"),
    ofWindows: true,
    picks: [wanted("extension.wanted")],
    rows: [row("extension.thickness"), row("extension.step")],
    tables: [boards("extension.stock")],
  },
};

/** What is true of one opening alone, and no room has. @type {Record<string, Group>} */
const ONE_ONLY = {
  beside: { title: say("group-beside"), ofWindows: true, picks: [pick("window.mulled", ["no", "yes"])] },
};

/**
 * A molding that runs along the walls, wanted or not.
 * @param {string} key @param {string} title @param {string[][]} rows @param {string[]} [joints] those that it can have
 */
const molding = (key, title, rows, joints) => ({
  title,
  picks: [wanted(`${key}.wanted`), inside(`${key}.inside`, joints)],
  rows,
  tables: [boards(`${key}.stock`)],
});

/** @type {Record<string, Group>} */
const MOLDINGS = {
  cap: molding("cap", say("group-cap"), [row("cap.width"), row("cap.thickness")]),
  shoe: molding("shoe", say("group-shoe"), [row("shoe.height"), row("shoe.thickness")]),
  chair_rail: molding("chair_rail", say("group-chair_rail"), [
    row("chair_rail.height"),
    row("chair_rail.width"),
    row("chair_rail.thickness"),
  ]),
  picture_rail: molding("picture_rail", say("group-picture_rail"), [
    row("picture_rail.height"),
    row("picture_rail.width"),
    row("picture_rail.thickness"),
  ]),
  crown: molding(
    "crown",
    say("group-crown"),
    [row("crown.width"), plain("crown.spring"), row("crown.spring_in")],
    ["cope", "miter"],
  ),
  blocking: {
    title: say("group-blocking"),
    picks: [wanted("blocking.wanted")],
    rows: [row("blocking.gap")],
    tables: [boards("blocking.stock")],
  },
  toe: { title: say("group-toe"), rows: [row("toe.height"), row("toe.depth")] },
  ends: {
    title: say("group-ends"),
    picks: [
      pick("open_end", ["square", "returned"]),
      pick("proud_end", ["eased", "returned", "notched", "butted"]),
      pick("casing.arris", ["ended", "wrapped"]),
      pick("thing.end", ["square", "scribed"]),
      pick("casing.corner", ["keeps", "yields"]),
    ],
  },
};

/** @type {Record<string, Group>} */
const CUTTING = {
  cutting: {
    title: say("group-cutting"),
    picks: [pick("shared_miters", ["no", "yes"]), pick("grain.order", ["no", "yes"])],
    rows: [
      row("kerf"),
      row("end_trim"),
      row("slack"),
      row("joint.gap"),
      row("cope.least"),
      row("thing.clearance"),
      plain("saw.range"),
      row("hold"),
      plain("spare_sticks"),
      plain("overage"),
    ],
  },
};

/** @type {Record<string, Group>} */
const STOCK = {
  other: { title: say("group-other"), tables: [boardsOfAny("other.stock")] },
  wood: {
    title: say("group-wood"),
    picks: [pick("wood.cut", ["flat", "quarter"])],
    rows: [plain("wood.species"), plain("wood.from"), plain("wood.to")],
  },
};

/** A house shows its lengths in one way, in every room. @type {Record<string, Group>} */
const SHOWN = {
  lengths: { title: say("group-lengths"), picks: [pick("lengths", ["inches", "feet and inches", "millimeters"])] },
};

/** All that a house may set, a room, one opening, and one thing in the way. */
export const OF_HOUSE = keyed({ ...SHOWN, ...BASE, ...OPENINGS, ...MOLDINGS, ...STOCK, ...CUTTING, ...SUPPLIES });
export const OF_ROOM = keyed({ ...BASE, ...OPENINGS, ...MOLDINGS, ...STOCK, ...CUTTING, ...SUPPLIES });
export const OF_OPENING = keyed({ ...OPENINGS, ...ONE_ONLY });
export const OF_THING = keyed(THINGS);

/** @param {Record<string, Group>} groups @returns {Group[]} */
function keyed(groups) {
  return Object.entries(groups).map(([key, group]) => ({ key, ...group }));
}

/** What each setting is called, for any screen that has to name one. */
export const SETTING_NAMES = new Map(
  [...OF_THING, ...OF_ROOM, ...keyed(ONE_ONLY)].flatMap(({ picks = [], rows = [], tables = [] }) =>
    [...picks, ...rows, ...tables].map(([name, label]) => /** @type {[string, string]} */ ([name, label])),
  ),
);
