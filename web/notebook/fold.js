// @ts-check
// The fold, as far as one must know it to write: which entries are struck, which statements are in force, how walls follow
// each other. The notebook of the engine is the law; a test holds this equal to it over journals made by chance.

/** @typedef {{id: string, stamp: string, version: number, kind: string, body: any, supersedes: string[]}} Entry */

const ID = /^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;
/** What counts as something to see: a browser's white space is not quite the engine's. */
const SEEN = /[^\s\x1c-\x1f\x85]|\ufeff/u;

const isText = (/** @type {any} */ value) => typeof value === "string";
const like = (/** @type {RegExp} */ pattern) => (/** @type {any} */ value) => isText(value) && pattern.test(value);
/** So many characters: of those that take two places in a text, each is one. */
const long = (/** @type {number} */ least, /** @type {number} */ most) => like(new RegExp(`^[^]{${least},${most}}$`, "u"));
const seen = (/** @type {(value: any) => boolean} */ fits) => (/** @type {any} */ value) => fits(value) && SEEN.test(value);
const oneOf = (/** @type {string[]} */ ...names) => (/** @type {any} */ value) => names.includes(value);
const orNone = (/** @type {(value: any) => boolean} */ fits) => (/** @type {any} */ value) => value === null || fits(value);
const whole = (/** @type {number} */ least, /** @type {number} */ most) => (/** @type {any} */ value) =>
  Number.isInteger(value) && value >= least && value <= most;
const rows = (/** @type {(row: any) => boolean} */ fits, least = 0) => (/** @type {any} */ value) =>
  Array.isArray(value) && value.length >= least && value.length <= 200 && value.every(fits);

const isId = like(ID);
const isWords = long(0, 2000);
const isName = seen(like(/^[^\n]{1,80}$/u));
const isFigure = long(0, 60);
const isPart = whole(0, 10_000);
const isLine = rows((point) => Array.isArray(point) && point.length === 2 && point.every(isPart), 2);
const isRow = (/** @type {any} */ row) =>
  row !== null && typeof row === "object" && !Array.isArray(row) && Object.values(row).every(orNone(isWords));
const isRows = rows(isRow);
const FIGURES = [
  "length", "corner", "sides", "at", "width", "height", "left", "right", "left_corner", "right_corner", "studs", "ceiling",
  "ceiling_corner", "plumb", "bow", "fall", "chair_rail", "picture_rail", "depth", "sill", "in_place", "salvaged", "sash",
  "depth_left", "depth_right", "depth_head", "depth_sill",
];

/** Of a list that is issued, what each row says. */
const ISSUED = {
  piece: isId,
  key: long(1, 500),
  letter: like(/^[A-Z]{1,4}$/),
  name: long(0, 500),
  profile: long(0, 200),
  cut: isFigure,
  shown: isFigure,
};

/**
 * What the body of each kind holds, no more and no less: what the engine cannot read counts for nothing here either.
 * @type {Record<string, Record<string, (value: any) => boolean>>}
 */
const BODIES = {
  __proto__: null,
  house: { house: isId, name: isWords, built: orNone(whole(1, 9999)) },
  room: { room: isId, house: isId, name: isWords, closed: (value) => typeof value === "boolean" },
  wall: { wall: isId, room: isId, after: orNone(isId), turn: oneOf("inside", "outside") },
  opening: { opening: isId, wall: isId, kind: oneOf("door", "window", "cased") },
  obstacle: { obstacle: isId, wall: isId, kind: isWords, base: oneOf("stops", "notch", "over") },
  reading: { of: isId, what: oneOf(...FIGURES), text: isWords },
  setting: { of: isId, name: like(/^[a-z_]+(\.[a-z_]+){0,3}$/), value: (value) => isWords(value) || isRows(value) },
  issue: { list: isId, room: isId, pieces: rows((row) => isRow(row) && holds(row, ISSUED)) },
  state: {
    piece: isId,
    state: oneOf("to cut", "cut", "fitted", "recut"),
    cut_to: orNone(isFigure),
    left: orNone(isFigure),
    right: orNone(isFigure),
    as_cut: orNone(isWords),
  },
  test_cut: { of: isId, what: oneOf("corner", "ceiling_corner"), text: seen(long(1, 200)) },
  free: { free: isId, room: isId, name: isName, profile: isName, text: isWords, count: like(/^[1-9][0-9]{0,2}$/) },
  article: { article: isId, house: isId, sort: oneOf("paper", "film", "sheet", "paint"), name: isName },
  covering: { covering: isId, room: isId, article: isId },
  lot: {
    lot: isId,
    of: isId,
    article: orNone(isId),
    name: isName,
    count: like(/^[0-9]{1,4}$/),
    price: isFigure,
    date: like(/^(\d{4}-\d{2}-\d{2})?$/),
    note: isWords,
  },
  attachment: {
    attachment: isId,
    of: isId,
    blob: like(/^[0-9a-f]{64}$/),
    size: whole(1, 32_000_000),
    type: like(/^[a-z]+\/[a-z0-9.+-]{1,100}$/),
    name: isWords,
  },
  stroke: { attachment: isId, points: isLine },
  pin: { pin: isId, attachment: isId, of: isId, what: oneOf(...FIGURES, "cut"), x: isPart, y: isPart },
  sum: { sum: isId, of: orNone(isId), text: seen(long(1, 1000)), note: isWords },
  tick: {
    of: isId,
    list: oneOf("work", "strips", "supplies", "cautions"),
    key: long(1, 500),
    state: oneOf("done", "skipped", "cut", "hung", "bought", "dismissed"),
    remember: isWords,
  },
  strike: { entry: isId, why: isWords },
};

/** @param {Entry} entry */
function isReadable({ version, kind, body }) {
  const fits = Number(version) === 1 && BODIES[kind]; // Python holds `true` to be 1
  return Boolean(fits) && holds(body, fits);
}

/** Whether it holds just what fits. @param {Record<string, any>} body @param {Record<string, (value: any) => boolean>} fits */
function holds(body, fits) {
  return Object.keys(body).length === Object.keys(fits).length &&
    Object.entries(fits).every(([name, fit]) => Object.hasOwn(body, name) && fit(body[name]));
}

/** Those that can be read, in the order that every device agrees on. @param {Entry[]} entries */
export function readable(entries) {
  return entries.filter(isReadable).sort(inOrder);
}

/** @param {Entry} one @param {Entry} other */
function inOrder(one, other) {
  if (one.stamp !== other.stamp) return one.stamp < other.stamp ? -1 : 1;
  return one.id < other.id ? -1 : Number(one.id > other.id);
}

/**
 * What is struck, and by which strike. A strike that is itself struck strikes nothing; two that strike each other, which no
 * honest device makes, neither.
 * @param {Entry[]} read @returns {Map<string, string>} the strike in force by what it strikes
 */
export function strikesIn(read) {
  /** @type {Map<string, string[]>} */
  const against = new Map();
  for (const { id, kind, body } of read) {
    if (kind === "strike") against.set(body.entry, [...(against.get(body.entry) ?? []), id]);
  }
  const force = forceOf(read, against);
  /** @type {Map<string, string>} */
  const strikes = new Map();
  for (const [entry, by] of against) {
    const [least] = by.filter((id) => force.get(id)).sort();
    if (least) strikes.set(entry, least);
  }
  return strikes;
}

/**
 * Which strikes have force, settled from those that nothing strikes; what is never settled has none.
 * @param {Entry[]} read @param {Map<string, string[]>} against
 */
function forceOf(read, against) {
  /** @type {Map<string, boolean>} */
  const force = new Map();
  const strikes = read.filter(({ kind }) => kind === "strike");
  const targetOf = new Map(strikes.map(({ id, body }) => [id, body.entry]));
  const waiting = strikes.map(({ id }) => id);
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (force.has(next)) continue;
    const live = (against.get(next) ?? []).filter((by) => force.get(by) !== false);
    if (live.some((by) => !force.has(by))) continue; // it is looked at again when those are settled
    force.set(next, live.length === 0);
    if (targetOf.has(targetOf.get(next))) waiting.push(/** @type {string} */ (targetOf.get(next)));
  }
  return force;
}

/**
 * The statements in force: neither struck nor superseded by one in force. More than one is a conflict.
 * @param {Entry[]} statements @param {Map<string, string>} strikes
 */
export function headsOf(statements, strikes) {
  const live = statements.filter(({ id }) => !strikes.has(id));
  const gone = new Set(live.flatMap(({ id, supersedes }) => supersedes.filter((older) => older !== id)));
  const heads = live.filter(({ id }) => !gone.has(id));
  // A ring of entries that supersede each other would leave none: then all of them stand.
  return heads.length ? heads : live;
}

/**
 * The ids of the statements in force that match, as a new one supersedes them.
 * @param {Entry[]} entries the whole journal @param {string} kind @param {Record<string, any>} about what their bodies hold
 */
export function inForce(entries, kind, about) {
  return headsOf(saying(readable(entries), kind, about), strikesIn(readable(entries))).map(({ id }) => id);
}

/** The ids of those that stand, superseded ones too: all to strike for the thing to be gone. @param {Entry[]} entries @param {string} kind @param {Record<string, any>} about */
export function standing(entries, kind, about) {
  const read = readable(entries);
  const strikes = strikesIn(read);
  return saying(read, kind, about).flatMap(({ id }) => (strikes.has(id) ? [] : [id]));
}

/** @param {Entry[]} read @param {string} kind @param {Record<string, any>} about */
function saying(read, kind, about) {
  const asked = Object.entries(about);
  return read.filter((entry) => entry.kind === kind && asked.every(([name, value]) => entry.body[name] === value));
}

/**
 * Walls in a row: each after the one it names; of two that name the same, the later first.
 * @param {Map<string, string | null>} after in order of first mention @returns {string[]}
 */
export function wallsInRow(after) {
  /** @type {Map<string | null, string[]>} */
  const following = new Map();
  for (const [wall, named] of after) {
    const before = named !== null && named !== wall && after.has(named) ? named : null;
    following.set(before, [...(following.get(before) ?? []), wall]);
  }
  /** @type {Set<string>} */
  const placed = new Set();
  const walls = [...after.keys()];
  const waiting = [...(following.get(null) ?? [])];
  let from = 0;
  while (waiting.length || placed.size < after.size) {
    // Walls that only follow each other in a ring have no start: the first of them is taken for one.
    while (!waiting.length && placed.has(walls[from])) from += 1;
    const wall = /** @type {string} */ (waiting.pop() ?? walls[from]);
    if (placed.has(wall)) continue;
    placed.add(wall);
    waiting.push(...(following.get(wall) ?? []));
  }
  return [...placed];
}
