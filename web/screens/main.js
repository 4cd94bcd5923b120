// @ts-check
// The page: its screens over one notebook. It holds what outlives a screen: the entries, the room in hand, what was last
// saved; and it shows the screen that the address names.
import { html, render, useEffect, useMemo, useRef, useState } from "../controls/ui.js";
import { useRoute } from "../controls/route.js";
import { recall, remember } from "../controls/scrap.js";
import { useWatched } from "../controls/watch.js";
import { isWide } from "../controls/wide.js";
import { useFinding } from "../drawings/found.js";
import { Guard } from "../frame/guard.js";
import { Keys } from "../frame/keys.js";
import { bringAll } from "../later.js";
import { useActs } from "../notebook/act.js";
import { Answers } from "../notebook/answers.js";
import { useBrought } from "../notebook/brought.js";
import { lengthsOf, Notebook } from "../notebook/notebook.js";
import { outline } from "../notebook/outline.js";
import { useOverdue } from "../notebook/overdue.js";
import { measureIn, sayTold } from "../words/words.js";
import { screenOf } from "./screens.js";

const ROOM_IN_HAND = "scantling room";

/**
 * @param {Element} root
 * @param {object} services engine, kept, journal, sync and update, as app.js makes them
 */
export function mount(root, services) {
  const answers = new Answers(/** @type {any} */ (services));
  render(html`<${Guard} services=${services}><${App} services=${services} answers=${answers} /><//>`, root);
}

/** @param {{services: any, answers: Answers}} props */
function App({ services, answers }) {
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
  const [wish, setWish] = useState(() => recall(ROOM_IN_HAND) ?? "");
  const acts = useActs(journal);
  const carried = useBrought(journal);
  useFinding();
  const overdue = useOverdue(journal, journal.counts().alone > 0);
  const [saved, setSaved] = useState(null);
  const [unreached, setUnreached] = useState(new Set());
  const arrived = useRef(false);
  useEffect(() => {
    arrived.current = true;
    // What this device keeps can wait: two cores wake the engine sooner without. Of what it does not, a signal may be lost.
    const isKept = navigator.serviceWorker?.controller;
    (isKept ? services.engine.settled() : Promise.resolve()).then(bringAll);
  }, []);
  const found = useMemo(() => outline(entries), [entries]);
  const room = found.rooms.get(wish) ?? [...found.rooms.values()][0] ?? null;
  measureIn(lengthsOf(found, room));
  const takeRoom = (id) => {
    remember(ROOM_IN_HAND, id);
    setWish(id);
  };
  const notebook = {
    services,
    journal,
    entries,
    engine,
    sync: sayTold(sync),
    newer,
    outline: found,
    room,
    takeRoom,
    ...acts,
    ...carried,
    overdue,
    saved,
    setSaved,
    unreached,
    setUnreached,
    counts: journal.counts(),
    arrived: arrived.current,
    answers,
  };
  const Screen = screenOf(screen);
  // At the table a list stays as it is while what is beside it changes.
  const here = isWide() && isBeside(screen, place) ? screen : [screen, ...place].join("/");
  return html`<${Notebook.Provider} value=${notebook}>
    <${Guard} services=${services} key=${here}><${Screen} place=${place} /><//>
    <${Keys} />
  <//>`;
}

/** Whether a place is a list, or a line of it that is shown beside it. @param {string} screen @param {string[]} place */
function isBeside(screen, [name, ...rest]) {
  if (screen === "cover" || screen === "house") return true;
  return screen === "pieces" ? !["free", "saw", "labels"].includes(name) && !rest.length : screen === "survey" && (!name || name === "row");
}

/** The state of a service, in its own word. @param {any} service */
function useStanding(service) {
  return useWatched(
    (listen) => service.onState(listen),
    () => service.state,
  );
}
