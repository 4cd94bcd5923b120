// @ts-check
// The page: five screens over one notebook. It holds what outlives a screen: the entries, the room in hand, what was last
// saved; and it shows the screen that the address names.
import { html, render, useEffect, useMemo, useRef, useState } from "../parts/ui.js";
import { useActs } from "../parts/act.js";
import { Notebook } from "../parts/notebook.js";
import { outline } from "../parts/outline.js";
import { useRoute } from "../parts/route.js";
import { useWatched } from "../parts/watch.js";
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
  const { journal, update } = services;
  const entries = useWatched(
    (listen) => journal.onChange(listen),
    () => journal.entries(),
  );
  const newer = useWatched(
    (listen) => update.onAvailable(listen),
    () => update.available,
  );
  const engine = useStanding(services.engine);
  const sync = useStanding(services.sync);
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
    journal,
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
    counts: journal.counts(),
    arrived: arrived.current,
    replies: replies.current,
  };
  const Screen = SCREENS[/** @type {keyof SCREENS} */ (screen)] ?? Survey;
  return html`<${Notebook.Provider} value=${notebook}><${Screen} place=${place} key=${[screen, ...place].join("/")} /><//>`;
}

function recall() {
  return localStorage.getItem(ROOM_IN_HAND) ?? "";
}


/** The state of a service, in its own word. @param {any} service */
function useStanding(service) {
  return useWatched(
    (listen) => service.onState(listen),
    () => service.state,
  );
}
