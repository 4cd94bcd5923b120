// @ts-check
// The outline: which houses, rooms, walls and openings the entries name, in walking order, and the readings as typed.
// It lets a person record a room while the engine is asleep. It knows no lengths; every figure is the engine's to give.
import { say } from "../words/words.js";
import { headsOf, readable, strikesIn, wallsInRow } from "./fold.js";

/** @typedef {import("./fold.js").Entry} Entry */
/** @typedef {{id: string, kind: string, base?: string}} Thing */
/** @typedef {{id: string, number: number, turn: string, after: string | null, openings: Thing[], obstacles: Thing[]}} Wall */
/** @typedef {{id: string, name: string, house: string, closed: boolean, walls: Wall[]}} Room */
/** @typedef {{id: string, name: string, built: number | null, lengths: string, rooms: Room[]}} House */
/** What is struck altogether, and where it was: a wall or thing in a room, a room in a house, a house nowhere. */
/** @typedef {{id: string, kind: string, name: string, room?: string, house?: string, strikes: string[]}} Struck */
/** @typedef {{entry: string, text: string, what: string, struck: boolean, strike: string | null}} Typed */

/** What has no name of its own, and no words that a person typed. @type {Record<string, (body: any) => string>} */
const NAMED = { wall: () => say("outline-wall"), opening: ({ kind }) => say(`opening-kind-${kind}`) };
const THINGS = ["house", "room", "wall", "opening", "obstacle"];

/**
 * @param {Entry[]} entries
 * @returns {{houses: House[], readings: Map<string, Typed[]>, rooms: Map<string, Room>, struck: Struck[]}}
 */
export function outline(entries) {
  const read = readable(entries);
  const strikes = strikesIn(read);
  const said = Object.fromEntries(THINGS.map((kind) => [kind, statementsBySubject(read, kind)]));
  const shown = Object.fromEntries(THINGS.map((kind) => [kind, shownOf(said[kind], kind, strikes)]));
  const within = (/** @type {string} */ kind, /** @type {string} */ parent) => {
    const named = mentioned(read, kind, parent);
    return (/** @type {string} */ id) => standing([...(named.get(id) ?? [])], shown[kind], parent, id);
  };
  const [openings, obstacles] = [within("opening", "wall"), within("obstacle", "wall")];
  const named = mentioned(read, "wall", "room");
  const walls = (/** @type {string} */ room) =>
    standing(wallsInRow(afterIn(room, named.get(room), said.wall, strikes)), shown.wall, "room", room).map((one, place) => ({
      ...one,
      number: place + 1,
      openings: openings(one.id),
      obstacles: obstacles(one.id),
    }));
  const inHouse = within("room", "house");
  const houses = [...shown.house.values()].map((house) => ({
    ...house,
    lengths: lengthsOf(read, strikes, house.id),
    rooms: inHouse(house.id).map((room) => ({ ...room, walls: walls(room.id) })),
  }));
  return {
    houses,
    // A room goes with its house, as it does for the engine.
    rooms: new Map(houses.flatMap(({ rooms }) => rooms.map((/** @type {Room} */ one) => [one.id, one]))),
    readings: readingsIn(read, strikes),
    struck: struckIn(said, strikes),
  };
}

/** What a house shows its lengths in. @param {Entry[]} read @param {Map<string, string>} strikes @param {string} house */
function lengthsOf(read, strikes, house) {
  const said = read.filter(({ kind, body }) => kind === "setting" && body.of === house && body.name === "lengths");
  const value = headsOf(said, strikes).at(-1)?.body.value;
  return ["feet and inches", "millimeters"].includes(value) ? value : "inches";
}

/** Every statement about each thing, in order. @param {Entry[]} read @param {string} kind @returns {Map<string, Entry[]>} */
function statementsBySubject(read, kind) {
  return Map.groupBy(
    read.filter((entry) => entry.kind === kind),
    ({ body }) => body[kind],
  );
}

/**
 * Each thing in force by its id, with what its latest statement says.
 * @param {Map<string, Entry[]>} said @param {string} kind @param {Map<string, string>} strikes @returns {Map<string, any>}
 */
function shownOf(said, kind, strikes) {
  const found = [...said].flatMap(([id, statements]) => {
    const head = headsOf(statements, strikes).at(-1);
    if (!head) return [];
    const { [kind]: _, ...facts } = head.body;
    return [[id, { ...facts, id }]];
  });
  return new Map(/** @type {any} */ (found));
}

/**
 * What was ever said to be in each parent, in order of first mention there.
 * @param {Entry[]} read @param {string} kind @param {string} parent @returns {Map<string, Set<string>>}
 */
function mentioned(read, kind, parent) {
  /** @type {Map<string, Set<string>>} */
  const found = new Map();
  for (const { body } of read.filter((entry) => entry.kind === kind)) {
    const here = found.get(body[parent]) ?? new Set();
    found.set(body[parent], here.add(body[kind]));
  }
  return found;
}

/**
 * Those that are still there: a door said to be in another wall since has left this one.
 * @param {string[]} ids @param {Map<string, any>} shown @param {string} parent @param {string} id @returns {any[]}
 */
function standing(ids, shown, parent, id) {
  return ids.flatMap((one) => (shown.get(one)?.[parent] === id ? [shown.get(one)] : []));
}

/**
 * What each wall of a room is after. One that is struck, or was said to be in another room since, keeps its place unseen,
 * or those after it would lose theirs; what stands has the last word on it.
 * @param {string} room @param {Iterable<string>} [walls] @param {Map<string, Entry[]>} said @param {Map<string, string>} strikes
 */
function afterIn(room, walls = [], said, strikes) {
  const here = (/** @type {Entry[]} */ some) => some.filter(({ body }) => body.room === room);
  const after = (/** @type {string} */ wall) => {
    const statements = said.get(wall) ?? [];
    const heads = here(headsOf(statements, strikes));
    return (heads.length ? heads : here(statements)).at(-1)?.body.after ?? null;
  };
  return new Map([...walls].map((wall) => [wall, after(wall)]));
}

/** Houses, rooms, walls and what was in them that are struck altogether. @param {Record<string, Map<string, Entry[]>>} said @param {Map<string, string>} strikes */
function struckIn(said, strikes) {
  return THINGS.flatMap((kind) =>
    [...said[kind]]
      .filter(([, statements]) => statements.every(({ id }) => strikes.has(id)))
      .map(([id, statements]) => struckThing(kind, id, statements, said, strikes)),
  );
}

/** @param {string} kind @param {string} id @param {Entry[]} statements @param {Record<string, Map<string, Entry[]>>} said @param {Map<string, string>} strikes @returns {Struck} */
function struckThing(kind, id, statements, said, strikes) {
  const { body } = /** @type {Entry} */ (statements.at(-1));
  return {
    id,
    kind,
    name: body.name ?? NAMED[kind]?.(body) ?? body.kind,
    room: kind === "room" ? undefined : said.wall.get(body.wall)?.at(-1)?.body.room,
    house: kind === "room" ? body.house : undefined,
    strikes: statements.map((entry) => /** @type {string} */ (strikes.get(entry.id))),
  };
}

/** @param {Entry[]} read @param {Map<string, string>} strikes @returns {Map<string, Typed[]>} */
function readingsIn(read, strikes) {
  const typed = read
    .filter(({ kind }) => kind === "reading")
    .map(({ id, body }) => {
      const strike = strikes.get(id) ?? null;
      return { of: body.of, entry: id, text: body.text, what: body.what, struck: strike !== null, strike };
    });
  return Map.groupBy(typed, ({ of }) => of);
}
