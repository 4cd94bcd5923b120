// @ts-check
// What is ticked off on a list, from the journal alone: a touch shows at once, whatever the engine is doing.
import { useMemo } from "../controls/ui.js";
import { say } from "../words/words.js";
import { headsOf, readable, strikesIn } from "./fold.js";
import { useNotebook } from "./notebook.js";
import { tick, untick } from "./write.js";

/** The state of every line that is ticked off, by its key. @param {import("./fold.js").Entry[]} entries @param {string} of @param {string} list @returns {Map<string, string>} */
export function ticksIn(entries, of, list) {
  const read = readable(entries);
  const strikes = strikesIn(read);
  const said = Map.groupBy(
    read.filter(({ kind, body }) => kind === "tick" && body.of === of && body.list === list),
    ({ body }) => body.key,
  );
  const last = [...said].map(([key, statements]) => [key, headsOf(statements, strikes).at(-1)?.body.state]);
  return new Map(/** @type {any} */ (last.filter(([, state]) => state)));
}

/**
 * A list to tick off: what is, and the ways to do it and to take it back.
 * @param {string} of @param {string} list
 */
export function useTicks(of, list) {
  const { journal, entries, act } = useNotebook();
  const states = useMemo(() => ticksIn(entries, of, list), [entries, of, list]);
  const put = (/** @type {string} */ key, /** @type {string | null} */ state, /** @type {string} */ said) =>
    state === null
      ? act(() => untick(journal, { of, list, key }), say("tick-not-yet.told", { what: said }))
      : act(() => tick(journal, { of, list, key }, state, said), say(`tick-${state}.told`, { what: said }));
  return { states, put };
}
