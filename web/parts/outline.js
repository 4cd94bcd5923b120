// @ts-check
// The outline: which houses, rooms, walls and openings the entries name, in walking order, and the readings as typed.
// It lets a person record a room while the engine is asleep. It knows no lengths; every figure is the engine's to give.

/** @typedef {{id: string, stamp: string, version: number, kind: string, body: any, supersedes: string[]}} Entry */
/** @typedef {{id: string, kind: string, entries: string[], all: string[], base?: string}} Thing */
/**
 * `entries` are the statements in force, which a new one supersedes; `all` are those to strike for it to be gone.
 * @typedef {{id: string, number: number, turn: string, after: string | null, openings: Thing[], obstacles: Thing[],
 *   entries: string[], all: string[]}} Wall
 */
/**
 * @typedef {{id: string, name: string, house: string, closed: boolean, walls: Wall[], entries: string[],
 *   all: string[]}} Room
 */
/** @typedef {{id: string, name: string, built: number | null, rooms: Room[], entries: string[], all: string[]}} House */
/** What is struck altogether, and where it was: a wall or thing in a room, a room in a house, a house nowhere. */
/** @typedef {{id: string, kind: string, name: string, room?: string, house?: string, strikes: string[]}} Struck */
/** @typedef {{entry: string, text: string, what: string, struck: boolean, strike: string | null}} Typed */

const KINDS = new Set(["house", "room", "wall", "opening", "obstacle", "reading", "strike"]);

/**
 * @param {Entry[]} entries
 * @returns {{houses: House[], readings: Map<string, Typed[]>, rooms: Map<string, Room>, struck: Struck[]}}
 */
export function outline(entries) {
  const inOrder = entries.filter(isReadable).sort(byStamp);
  const strikes = strikesIn(inOrder);
  const standing = inOrder.filter((entry) => !strikes.has(entry.id));
  const past = new Set(standing.flatMap((entry) => entry.supersedes));
  const heads = (/** @type {string} */ kind) => gather(kind, standing, past);
  const [openings, obstacles] = [heads("opening"), heads("obstacle")];
  const walls = heads("wall").map((wall) => ({
    ...wall,
    openings: openings.filter((opening) => opening.wall === wall.id),
    obstacles: obstacles.filter((obstacle) => obstacle.wall === wall.id),
  }));
  const order = walk(inOrder, strikes);
  const allHouses = heads("house");
  // A room goes with its house, as it does for the engine.
  const rooms = heads("room")
    .filter((room) => allHouses.some((house) => house.id === room.house))
    .map((room) => ({ ...room, walls: number(order, walls, room.id) }));
  const houses = allHouses.map((house) => ({ ...house, rooms: rooms.filter((room) => room.house === house.id) }));
  return {
    houses,
    rooms: new Map(rooms.map((room) => [room.id, room])),
    readings: readingsIn(inOrder, strikes),
    struck: struckIn(inOrder, strikes),
  };
}

/** What a newer version wrote is the engine's to count; here it would be read wrong. @param {Entry} entry */
function isReadable({ version, kind }) {
  return version === 1 && KINDS.has(kind);
}

/** @param {Entry} one @param {Entry} other */
export function byStamp(one, other) {
  return one.stamp < other.stamp ? -1 : one.stamp > other.stamp ? 1 : 0;
}

/**
 * What is struck, and by which strike. Latest first: a strike that is itself struck strikes nothing.
 * @param {Entry[]} inOrder
 */
export function strikesIn(inOrder) {
  /** @type {Map<string, string>} */
  const strikes = new Map();
  for (const entry of inOrder.toReversed()) {
    if (entry.kind === "strike" && !strikes.has(entry.id)) strikes.set(entry.body.entry, entry.id);
  }
  return strikes;
}

/**
 * One record per thing, its latest standing statement.
 * @param {string} kind @param {Entry[]} statements @param {Set<string>} past what a standing statement superseded
 */
function gather(kind, statements, past) {
  /** @type {Map<string, any>} */
  const records = new Map();
  for (const { id, body } of statements.filter((entry) => entry.kind === kind)) {
    const { [kind]: subject, ...facts } = body;
    const known = records.get(subject) ?? { entries: [], all: [] };
    const stands = !past.has(id);
    const entries = stands ? [...known.entries, id] : known.entries;
    records.set(subject, { ...(stands ? facts : known), id: subject, entries, all: [...known.all, id] });
  }
  return [...records.values()].filter((record) => record.entries.length);
}

/** Houses, rooms, walls and what was in them that are struck altogether. @param {Entry[]} inOrder @param {Map<string, string>} strikes */
function struckIn(inOrder, strikes) {
  const roomOf = new Map(inOrder.filter(({ kind }) => kind === "wall").map(({ body }) => [body.wall, body.room]));
  const found = ["house", "room", "wall", "opening", "obstacle"].flatMap((kind) => {
    /** @type {Map<string, Entry[]>} */
    const said = Map.groupBy(
      inOrder.filter((entry) => entry.kind === kind),
      ({ body }) => body[kind],
    );
    return [...said].filter(([, entries]) => entries.every(({ id }) => strikes.has(id)));
  });
  return found.map(([id, entries]) => {
    const { kind, body } = /** @type {Entry} */ (entries.at(-1));
    const strikesHere = entries.map((entry) => /** @type {string} */ (strikes.get(entry.id)));
    const name = body.name ?? (kind === "wall" ? "wall" : body.kind);
    const room = kind === "room" ? undefined : roomOf.get(body.wall);
    return { id, kind, name, room, house: kind === "room" ? body.house : undefined, strikes: strikesHere };
  });
}

/**
 * Wall ids as one walks them, of every room: each after the one it names, and of two the later first. A struck wall
 * keeps its place, unseen, or those after it would lose theirs.
 * @param {Entry[]} inOrder @param {Map<string, string>} strikes
 */
function walk(inOrder, strikes) {
  const statements = inOrder.filter((entry) => entry.kind === "wall");
  const standing = statements.filter((entry) => !strikes.has(entry.id));
  /** @type {Map<string, string | null>} what stands has the last word on what a wall is after */
  const after = new Map([...statements, ...standing].map(({ body }) => [body.wall, body.after]));
  const walls = [...after.keys()];
  const waiting = walls.filter((wall) => !after.has(after.get(wall) ?? ""));
  /** @type {Set<string>} */
  const placed = new Set();
  while (waiting.length) {
    const wall = /** @type {string} */ (waiting.pop());
    if (!placed.has(wall)) waiting.push(...walls.filter((other) => after.get(other) === wall));
    placed.add(wall);
  }
  return [...placed, ...walls.filter((wall) => !placed.has(wall))];
}

/** The walls of a room in order, counted. @param {string[]} order @param {any[]} walls @param {string} room */
function number(order, walls, room) {
  const walked = order.flatMap((id) => walls.filter((wall) => wall.id === id && wall.room === room));
  return walked.map((wall, place) => ({ ...wall, number: place + 1 }));
}

/** @param {Entry[]} inOrder @param {Map<string, string>} strikes */
function readingsIn(inOrder, strikes) {
  /** @type {Map<string, Typed[]>} */
  const readings = new Map();
  for (const { id, kind, body } of inOrder) {
    if (kind !== "reading") continue;
    const strike = strikes.get(id) ?? null;
    const typed = { entry: id, text: body.text, what: body.what, struck: strike !== null, strike };
    readings.set(body.of, [...(readings.get(body.of) ?? []), typed]);
  }
  return readings;
}
