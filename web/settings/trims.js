// @ts-check
// What can be set, group by group: each by its name in the journal. Names, no figures; the words are in the catalog.
import { say } from "../words/words.js";
import { boards, boardsOfAny, inside, lengthRow, pick, plainRow, yesOrNo } from "./said.js";
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
      yesOrNo("base.wanted"),
      inside("base.inside"),
      pick("base.floor", ["follow", "scribe", "taper"]),
      pick("bow.beyond", ["shim", "scribe"]),
      pick("scarf.place", ["plan", "even", "offcut"]),
    ],
    rows: [lengthRow("base.height"), lengthRow("base.thickness"), lengthRow("bow.spring"), plainRow("light.from"), plainRow("base.scarf")],
    tables: [boards("base.stock")],
  },
};

/** What goes round an opening: these one opening may differ in from its room. @type {Record<string, Group>} */
const OPENINGS = {
  casing: {
    title: say("group-casing"),
    picks: [yesOrNo("casing.wanted", ["none"]), pick("head", ["mitered", "butted"])],
    rows: [
      lengthRow("casing.width"),
      lengthRow("casing.thickness"),
      lengthRow("reveal"),
      lengthRow("casing.head_width"),
      lengthRow("casing.overhang"),
      lengthRow("casing.clearance"),
    ],
    tables: [boards("casing.stock"), boards("casing.head_stock")],
  },
  plinth: {
    title: say("group-plinth"),
    rows: [lengthRow("plinth.height"), lengthRow("plinth.width"), lengthRow("plinth.thickness")],
    tables: [boards("plinth.stock")],
  },
  dressed: {
    title: say("group-dressed"),
    rows: [
      lengthRow("block.size"),
      lengthRow("block.thickness"),
      lengthRow("fillet.thickness"),
      lengthRow("fillet.overhang"),
      lengthRow("head_cap.thickness"),
      lengthRow("head_cap.overhang"),
      lengthRow("backband.width"),
      lengthRow("backband.thickness"),
    ],
    tables: [boards("block.stock"), boards("fillet.stock"), boards("head_cap.stock"), boards("backband.stock")],
  },
  window: {
    title: say("group-window"),
    ofWindows: true,
    picks: [pick("window.style", ["stool", "picture"]), yesOrNo("apron.wanted")],
    rows: [lengthRow("stool.thickness"), lengthRow("stool.horn"), lengthRow("apron.width"), lengthRow("apron.thickness")],
    tables: [boards("stool.stock"), boards("apron.stock")],
  },
  extension: {
    title: say("group-extension"),
    ofWindows: true,
    picks: [yesOrNo("extension.wanted")],
    rows: [lengthRow("extension.thickness"), lengthRow("extension.step")],
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
  picks: [yesOrNo(`${key}.wanted`), inside(`${key}.inside`, joints)],
  rows,
  tables: [boards(`${key}.stock`)],
});

/** @type {Record<string, Group>} */
const MOLDINGS = {
  cap: molding("cap", say("group-cap"), [lengthRow("cap.width"), lengthRow("cap.thickness")]),
  shoe: molding("shoe", say("group-shoe"), [lengthRow("shoe.height"), lengthRow("shoe.thickness")]),
  chair_rail: molding("chair_rail", say("group-chair_rail"), [
    lengthRow("chair_rail.height"),
    lengthRow("chair_rail.width"),
    lengthRow("chair_rail.thickness"),
  ]),
  picture_rail: molding("picture_rail", say("group-picture_rail"), [
    lengthRow("picture_rail.height"),
    lengthRow("picture_rail.width"),
    lengthRow("picture_rail.thickness"),
  ]),
  crown: molding(
    "crown",
    say("group-crown"),
    [lengthRow("crown.width"), plainRow("crown.spring"), lengthRow("crown.spring_in")],
    ["cope", "miter"],
  ),
  blocking: {
    title: say("group-blocking"),
    picks: [yesOrNo("blocking.wanted")],
    rows: [lengthRow("blocking.gap")],
    tables: [boards("blocking.stock")],
  },
  toe: { title: say("group-toe"), rows: [lengthRow("toe.height"), lengthRow("toe.depth")] },
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
      lengthRow("kerf"),
      lengthRow("end_trim"),
      lengthRow("slack"),
      lengthRow("joint.gap"),
      lengthRow("cope.least"),
      lengthRow("thing.clearance"),
      plainRow("saw.range"),
      lengthRow("hold"),
      plainRow("spare_sticks"),
      plainRow("overage"),
    ],
  },
};

/** @type {Record<string, Group>} */
const STOCK = {
  other: { title: say("group-other"), tables: [boardsOfAny("other.stock")] },
  wood: {
    title: say("group-wood"),
    picks: [pick("wood.cut", ["flat", "quarter"])],
    rows: [plainRow("wood.species"), plainRow("wood.from"), plainRow("wood.to")],
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
