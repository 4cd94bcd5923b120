// @ts-check
// Where a covering goes: which walls, and of paint which surfaces; each touched to have it or not.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { useNotebook } from "../../notebook/notebook.js";
import { setSetting, strikeOut } from "../../notebook/write.js";
import { say } from "../../words/words.js";

const WALLS = "cover.walls";
const SURFACES = "cover.surfaces";
/** What the survey counts by itself. */
const COUNTED = ["walls", "ceiling", "trim"];

/** Saves a list of rows, or strikes what was ever said of it where none is left. @param {any} answer @param {string} name */
function useList(answer, name) {
  const { journal, act } = useNotebook();
  return (/** @type {object[]} */ rows, /** @type {string} */ words) =>
    act(
      () =>
        rows.length
          ? setSetting(journal, answer.id, name, rows)
          : strikeOut(journal, "setting", { of: answer.id, name }, "none is chosen"),
      words,
    );
}

/** @param {{answer: any, asked: any}} props */
export function Walls({ answer, asked }) {
  const save = useList(answer, WALLS);
  const rows = Array.isArray(answer.settings[WALLS]) ? answer.settings[WALLS] : [];
  const chosen = new Set(rows.map((/** @type {any} */ row) => row.wall));
  const walls = asked?.walls ?? [];
  const touch = (/** @type {any} */ { id, name }) => {
    const now = walls.filter((one) => (one.id === id ? !chosen.has(id) : chosen.has(one.id)));
    save(now.map((one) => ({ wall: one.id })), say(chosen.has(id) ? "where-wall.off" : "where-wall.on", { wall: name }));
  };
  return html`<fieldset class="choice">
    <legend>${say("where-wall")}</legend>
    <p class="pencil">${say(chosen.size ? "where-wall.some" : "where-wall.all")}</p>
    <div class="choice-row numbers">
      ${walls.map((one) => html`<${Button} label=${one.name} pressed=${chosen.has(one.id)} onTouch=${() => touch(one)} key=${one.id}>${one.number}<//>`)}
    </div>
  </fieldset>`;
}

/** @param {{answer: any}} props */
export function Surfaces({ answer }) {
  const save = useList(answer, SURFACES);
  const rows = Array.isArray(answer.settings[SURFACES]) ? answer.settings[SURFACES] : [];
  const has = (/** @type {string} */ name) => rows.some((row) => row.name === name && !row.area);
  const touch = (/** @type {string} */ name) => {
    const others = rows.filter((row) => row.name !== name || row.area);
    const surface = say(`where-counted-${name}`);
    if (has(name)) save(others, say("where-surface.off", { surface }));
    else save([...others, { name, area: null }], say("where-surface.on", { surface }));
  };
  return html`<fieldset class="choice">
    <legend>${say("where-surface")}</legend>
    <p class="pencil">${say(rows.length ? "where-surface.some" : "where-surface.walls")}</p>
    <div class="choice-row">
      ${COUNTED.map(
        (name) => html`<${Button} pressed=${has(name)} onTouch=${() => touch(name)} key=${name}>
          ${say(`where-counted-${name}`)}<//>`,
      )}
    </div>
  </fieldset>`;
}
