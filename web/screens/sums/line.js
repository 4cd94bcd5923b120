// @ts-check
// One sum of the tape in hand: its working, its note, and where what it comes to may go: a reading, or another sum.
import { html, useState } from "../../controls/ui.js";
import { Button, Field } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { go, link, stayHere } from "../../controls/route.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { addReading, saySum, strikeOut } from "../../notebook/write.js";
import { say } from "../../words/words.js";
import { shownOf } from "./tape.js";
import { beginWith, bring } from "./writing.js";

/** @param {{id: string}} props */
export function Line({ id }) {
  const { engine, room } = useNotebook();
  const { answer, older } = useAnswer({ ask: "tape", room: room?.id, sum: id });
  const kept = answer?.sums[0];
  if (!kept) {
    return html`<${Page} title=${say("sum")} tab="sums">
      <p role="status">${say(answer || engine !== "waking" ? "sum.none" : "sums-waking")}</p>
      <p class="onward"><a href=${link("sums", "tape")}>${say("tape")}</a></p>
    <//>`;
  }
  return html`<${Page} title=${kept.text} aside=${kept.room || " "} tab="sums" kind="form sum" older=${older}>
    ${kept.worked ? html`<${Worked} worked=${kept.worked} />` : html`<p class="wrong">${kept.error}</p>`}
    <${Note} kept=${kept} key=${kept.note} />
    <${Onward} kept=${kept} />
    <${IntoReading} kept=${kept} />
    <${Away} kept=${kept} />
  <//>`;
}

/** @param {{worked: any}} props */
function Worked({ worked }) {
  const notes = [worked.remainder_said, ...worked.taken].filter(Boolean);
  return html`<section class="answer">
      <p class="hero"><${Figure} shown=${shownOf(worked)} size=${worked.area ? "row" : "big"} unit=${Boolean(worked.length)} /></p>
      ${notes.map((words) => html`<p class="pencil" key=${words}>${words}</p>`)}
    </section>
    ${
      worked.working.length
        ? html`<ol class="rows" aria-label=${say("sum.working")}>${worked.working.map(
            (/** @type {any} */ step, /** @type {number} */ at) => html`<li class="row" key=${at}><span class="row-words">${step.text}</span>= ${step.shown}</li>`,
          )}</ol>`
        : null
    }`;
}

/** @param {{kept: any}} props */
function Note({ kept: { sum, of, text, note } }) {
  const { journal, act } = useNotebook();
  const [typed, setTyped] = useState(note);
  const said = say("sum-note.done", { sum: text });
  const save = () => act(() => saySum(journal, { id: sum, of, text, note: typed.trim() }), said);
  return html`<div class="setting">
    <${Field} label=${say("sum-note")} value=${typed} onInput=${setTyped} hint="" holds=${say("sum-note.holds")}
      onEnter=${save} />
    <${Button} label=${say("sum-note.save")} disabled=${typed.trim() === note} onTouch=${save}>${say("save")}<//>
  </div>`;
}

/** @param {{kept: any}} props */
function Onward({ kept: { again, reading } }) {
  const on = (/** @type {() => void} */ doing) => () => {
    doing();
    go("sums");
  };
  return html`<div class="side-by-side">
    <${Button} onTouch=${on(() => beginWith(again))}>${say("sum.again")}<//>
    ${reading ? html`<${Button} onTouch=${on(() => bring(reading))}>${say("sum-into.sum", { length: reading })}<//>` : null}
  </div>`;
}

/** What it comes to, in a reading of the room: those that are wanted first. @param {{kept: any}} props */
function IntoReading({ kept: { reading, rounded, rounded_to: to, text } }) {
  const { journal, act, room } = useNotebook();
  const { answer } = useAnswer(room && reading ? { ask: "figures", room: room.id } : null);
  if (!reading) return html`<p class="pencil">${say("sum-into.none")}</p>`;
  if (!answer?.figures.length) return null;
  const put = async (/** @type {any} */ figure) => {
    const stays = stayHere();
    const said = say("sum-into.done", { figure: figure.title, length: reading, sum: text });
    const done = await act(() => addReading(journal, figure.of, figure.what, reading), said);
    if (done && stays()) go("survey", "row", figure.of, figure.what);
  };
  const [wanted, others] = [true, false].map((is) => answer.figures.filter((/** @type {any} */ one) => (one.state === "wanted") === is));
  return html`<section class="group">
    <h2>${say("sum-into", { length: reading })}</h2>
    ${rounded ? html`<p class="pencil">${say("sum-into.rounded", { to })}</p>` : null}
    <${ReadingsToBring} figures=${wanted} label=${say("sum-into.wanted")} onPick=${put} />
    <details class="more" open=${!wanted.length}><summary>${say("sum-into.more", { room: room.name })}</summary>
      <${ReadingsToBring} figures=${others} label=${say("sum-into.others")} onPick=${put} /></details>
  </section>`;
}

/** @param {{figures: any[], label: string, onPick: (figure: any) => void}} props */
export function ReadingsToBring({ figures, label, onPick }) {
  if (!figures.length) return null;
  return html`<ul class="rows" aria-label=${label}>
    ${figures.map(
      (one) => html`<li key=${`${one.of} ${one.what}`}><button class="row" onClick=${() => onPick(one)}>
        <span class="row-words"><span>${one.title}</span><small>${one.note}</small></span><${Figure} shown=${one.shown} />
      </button></li>`,
    )}
  </ul>`;
}

/** @param {{kept: any}} props */
function Away({ kept: { sum, text } }) {
  const { journal, act } = useNotebook();
  const strike = async () => {
    const stays = stayHere();
    const said = say("strike.text", { what: text });
    const done = await act(() => strikeOut(journal, "sum", { sum }, "struck by hand").then(() => true), said);
    if (done && stays()) go("sums");
  };
  return html`<div class="doing"><div class="last-row">
    <${Button} onTouch=${() => go("sums")}>${say("back")}<//>
    <${Button} onTouch=${strike}>${say("sum.strike")}<//>
  </div></div>`;
}
