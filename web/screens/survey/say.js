// @ts-check
// A whole wall said in one breath, into the field that the system's dictation writes in. Each part is shown with what it
// was understood as; what is in doubt is asked; nothing is saved until a touch saves it.
import { html, useId, useState } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { Refusal } from "../../controls/notes.js";
import { go, stayHere } from "../../controls/route.js";
import { RoomInView } from "../../drawings/drawn.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { MILLIMETERS, useAnswer, useLengths, useNotebook } from "../../notebook/notebook.js";
import { addReading } from "../../notebook/write.js";
import { say } from "../../words/words.js";

/** A part that is left out. */
const OUT = -1;

/** @param {{place: string[]}} props the wall that one faces */
export function Say({ place: [wall] }) {
  const { room, journal, act } = useNotebook();
  const [text, setText] = useState("");
  /** What was touched of a part in doubt: the place of a choice, or that it is left out. */
  const [chosen, setChosen] = useState(/** @type {Map<string, number>} */ (new Map()));
  const said = text.trim();
  const bare = useLengths() === MILLIMETERS ? { bare: MILLIMETERS } : {};
  const faced = room.walls.find((/** @type {any} */ one) => one.id === wall);
  const { answer, error, heard } = useAnswer(said ? { ask: "breath", room: room.id, text: said, wall, ...bare } : null);
  const id = useId();
  const parts = said && answer ? answer.parts.map((/** @type {any} */ part, /** @type {number} */ place) => settled(part, place, chosen)) : [];
  const toSave = parts.filter((/** @type {any} */ part) => part.figure && !part.out);
  const asked = parts.filter((/** @type {any} */ part) => !part.figure && !part.out).length;
  const choose = (/** @type {string} */ key, /** @type {number} */ which) => {
    const now = new Map(chosen);
    if (now.get(key) === which) now.delete(key);
    else now.set(key, which);
    setChosen(now);
  };
  const save = async () => {
    const all = async () => {
      for (const { figure, reading } of toSave) await addReading(journal, figure.of, figure.what, reading);
      return true;
    };
    const stays = stayHere();
    const done = toSave.map((/** @type {any} */ part) => say("reading-done", { title: part.figure.title, text: part.reading }));
    if ((await act(all, done.join("; "))) && stays()) go("survey");
  };
  return html`<${Page} title=${say("breath")} tab="survey" kind="form" view=${html`<${RoomInView} wall=${faced} />`}>
    <section>
      <div class="field">
        <label for=${id}>${say("breath-text")}</label>
        <textarea id=${id} rows="4" maxlength="1000" autocapitalize="off" spellcheck=${false} value=${text}
          aria-describedby="${id}-hint" onInput=${(/** @type {any} */ event) => setText(event.currentTarget.value)}></textarea>
        <p id="${id}-hint" class="pencil">${say("breath-text.hint")}</p>
      </div>
      ${said && !heard ? html`<${Asleep} what=${say("breath-parts")} />` : null}
      <${Refusal} error=${said ? error : null} />
      <p role="status">${said && answer ? answer.words : ""}</p>
      <ol class="rows">${parts.map((/** @type {any} */ part) => html`<${Heard} part=${part} choose=${choose} key=${part.key} />`)}</ol>
    </section>
    <div class="low">
      ${asked ? html`<p class="pencil">${say("breath-doubt")}</p>` : null}
      <div class="last-row">
        <${Button} onTouch=${() => go("survey")}>${say("back")}<//>
        <${Button} kind="main" disabled=${!toSave.length || asked > 0} onTouch=${save}>${say("breath-save", { count: toSave.length })}<//>
      </div>
    </div>
  <//>`;
}

/** A part with what was touched about it. @param {any} part @param {number} place @param {Map<string, number>} chosen */
function settled(part, place, chosen) {
  const key = `${place} ${part.heard}`;
  const which = chosen.get(key);
  const figure = part.figure ?? (which === undefined ? null : part.choices[which]) ?? null;
  return { ...part, key, which, figure, out: which === OUT };
}

/** One part: what was heard, what it is of, and where it is in doubt what to touch. @param {{part: any, choose: (key: string, which: number) => void}} props */
function Heard({ part, choose }) {
  return html`<li>
    <div class="row">
      <span class="row-words"><span>${part.out ? html`<s>${part.heard}</s>` : (part.figure?.title ?? part.heard)}</span>
        ${part.figure && !part.out ? html`<small>${say("breath-heard", { words: part.heard })}</small>` : null}
        ${part.doubt && !part.out ? html`<small class=${part.figure ? "" : "wrong"}>${part.doubt}</small>` : null}</span>
      <${Figure} shown=${part.shown} unit=${/["m]$/.test(part.shown)} />
    </div>
    <div class="side-by-side">
      ${part.choices.map((/** @type {any} */ one, /** @type {number} */ which) => html`<${Button} pressed=${part.which === which}
        onTouch=${() => choose(part.key, which)} key=${`${one.of} ${one.what}`}>${one.title}<//>`)}
      <${Button} kind="plain" pressed=${part.out} label=${say("breath-out.what", { words: part.heard })} onTouch=${() => choose(part.key, OUT)}>
        ${say("breath-out")}<//>
    </div>
  </li>`;
}
