// @ts-check
// What there is to read in a room: the engine's rows, or while it sleeps the plain ones that the outline allows, so that
// a person can measure at once. The plain rows want what is unread and judge nothing.
import { useAnswer, useNotebook } from "./notebook.js";

/** What an opening is called, for any screen that has to name one. */
export const OPENINGS = { door: "door", window: "window", cased: "cased opening" };

/**
 * @param {string | null} room
 * @param {string} [inHand] the wall to draw as the one in hand, if not the one that comes next
 * @returns {{awake: boolean, rows: any[], plan: string, problems: any[], cautions: string[], wanted: number | null}}
 */
export function useSurvey(room, inHand) {
  const { outline, engine, replies } = useNotebook();
  const { answer } = useAnswer(room ? { ask: "survey", room, in_hand: inHand } : null);
  const last = `the last survey of ${room}`;
  if (answer) replies.set(last, answer);
  // With another wall in hand it is another question; until it is answered the last survey is nearer than the plain rows.
  if (engine === "awake" && replies.has(last)) return { ...replies.get(last), awake: true };
  const found = outline.rooms.get(room);
  const rows = found ? found.walls.flatMap((wall) => plainRows(wall, found, outline.readings)) : [];
  return { awake: false, rows, plan: "", problems: [], cautions: [], wanted: null };
}

/** @param {any} wall @param {any} room @param {Map<string, any[]>} readings */
function plainRows(wall, room, readings) {
  const name = `wall ${wall.number}`;
  const openings = wall.openings.flatMap(({ id, kind }) => {
    const thing = OPENINGS[/** @type {keyof OPENINGS} */ (kind)] ?? kind;
    return [
      { of: id, what: "at", title: `${name}, left corner to the ${thing}` },
      { of: id, what: "width", title: `${name}, ${thing}, jamb to jamb` },
      { of: id, what: "left", title: `${name}, ${thing}, height at the left` },
      { of: id, what: "right", title: `${name}, ${thing}, height at the right` },
      ...(kind === "window" ? [{ of: id, what: "sash", title: `${name}, ${thing}, sash to the wall` }] : []),
    ];
  });
  const obstacles = wall.obstacles.flatMap(({ id, kind }) => [
    { of: id, what: "at", title: `${name}, left corner to the ${kind}` },
    { of: id, what: "width", title: `${name}, ${kind}, from edge to edge` },
  ]);
  const figures = [
    ...openings,
    ...obstacles,
    { of: wall.id, what: "length", title: `${name}, along the floor` },
    { of: wall.id, what: "corner", title: `corner ${wall.number}, ${wall.turn}` },
  ].filter(({ what }) => what !== "corner" || room.closed || wall !== room.walls.at(-1));
  return figures.map(({ of, what, title }) => {
    const whats = what === "corner" ? ["corner", "sides"] : [what];
    const typed = (readings.get(of) ?? []).filter((one) => whats.includes(one.what));
    const standing = typed.filter((one) => !one.struck).map((one) => one.text);
    const wanted = standing.length === 0;
    return {
      key: `${of} ${what}`,
      of,
      what,
      wall: wall.id,
      number: wall.number,
      title,
      hint: "",
      why: "",
      wanted,
      state: wanted ? "wanted" : "read",
      note: standing.join(" · "),
      figure: null,
      readings: typed,
    };
  });
}

/**
 * The row to read next: the first one wanted after this one, round the room, leaving out what cannot be reached for now.
 * @param {any[]} rows @param {string | null} key @param {Set<string>} unreached
 */
export function nextRow(rows, key, unreached) {
  const here = rows.findIndex((row) => row.key === key) + 1;
  const round = [...rows.slice(here), ...rows.slice(0, here)];
  return round.find((row) => row.wanted && row.key !== key && !unreached.has(row.key)) ?? null;
}
