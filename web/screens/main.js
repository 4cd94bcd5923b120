// @ts-check
// The page: five screens over one notebook. It holds what outlives a screen: the entries, the room in hand, what was last
// saved; and it shows the screen that the address names.
import { html, render, useEffect, useMemo, useRef, useState } from "../parts/ui.js";
import { useActs } from "../parts/act.js";
import { Notebook } from "../parts/notebook.js";
import { outline } from "../parts/outline.js";
import { useRoute } from "../parts/route.js";
import { Boards } from "./boards.js";
import { House } from "./house.js";
import { Pieces } from "./pieces.js";
import { Sums } from "./sums.js";
import { Survey } from "./survey.js";

const SCREENS = { survey: Survey, pieces: Pieces, boards: Boards, sums: Sums, house: House };
const ROOM_IN_HAND = "scantling room";

/**
 * @param {Element} root
 * @param {object} services engine, journal, sync and update, as app.js makes them
 */
export function mount(root, services) {
  render(html`<${App} services=${services} />`, root);
}

/** @param {{services: any}} props */
function App({ services }) {
  const [screen = "", ...place] = useRoute();
  const entries = useEntries(services.journal);
  const engine = useStanding(services.engine);
  const sync = useStanding(services.sync);
  const newer = useNewer(services.update);
  const [wish, setWish] = useState(recall);
  const acts = useActs();
  const [saved, setSaved] = useState(null);
  const [unreached, setUnreached] = useState(new Set());
  const arrived = useRef(false);
  const replies = useRef(new Map());
  useEffect(() => {
    arrived.current = true;
  }, []);
  const found = useMemo(() => outline(entries), [entries]);
  const room = found.rooms.get(wish) ?? [...found.rooms.values()][0] ?? null;
  const takeRoom = (id) => {
    localStorage.setItem(ROOM_IN_HAND, id);
    setWish(id);
  };
  const notebook = {
    services,
    journal: services.journal,
    entries,
    engine,
    sync,
    newer,
    outline: found,
    room,
    takeRoom,
    ...acts,
    saved,
    setSaved,
    unreached,
    setUnreached,
    counts: services.journal.counts(),
    arrived: arrived.current,
    replies: replies.current,
  };
  const Screen = SCREENS[/** @type {keyof SCREENS} */ (screen)] ?? Survey;
  return html`<${Notebook.Provider} value=${notebook}><${Screen} place=${place} key=${[screen, ...place].join("/")} /><//>`;
}

function recall() {
  return localStorage.getItem(ROOM_IN_HAND) ?? "";
}

/** Every entry here; another list whenever one was added. @param {import("../journal/journal.js").Journal} journal */
function useEntries(journal) {
  const [entries, setEntries] = useState(() => journal.entries());
  useEffect(() => journal.onChange(() => setEntries(journal.entries())), [journal]);
  return entries;
}

/** Whether a new version of the page waits on this device. @param {any} update */
function useNewer(update) {
  const [newer, setNewer] = useState(update.available);
  useEffect(() => update.onAvailable(() => setNewer(update.available)), [update]);
  return newer;
}

/** The state of a service, in its own word. @param {any} service */
function useStanding(service) {
  const [state, setState] = useState(service.state);
  useEffect(() => service.onState(setState), [service]);
  return state;
}
