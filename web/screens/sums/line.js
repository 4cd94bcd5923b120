// @ts-check
// One sum of the tape in hand: its working, its note, and where what it comes to may go: a reading, or another sum.
import { html, useState } from "../../controls/ui.js";
import { Button, Field } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { go, link, stayHere } from "../../controls/route.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { addReading, saySum, strikeOut } from "../../notebook/write.js";
import { shownOf } from "./tape.js";
import { beginWith, bring } from "./writing.js";

/** @param {{id: string}} props */
export function Line({ id }) {
  const { engine, room } = useNotebook();
  const { answer, older } = useAnswer({ ask: "tape", room: room?.id, sum: id });
  const kept = answer?.sums[0];
  if (!kept) {
    return html`<${Page} title="A sum" tab="sums">
      <p role="status">${answer || engine !== "waking" ? "There is no such sum on the tape now." : "Engine waking."}</p>
      <p class="onward"><a href=${link("sums", "tape")}>The tape</a></p>
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
        ? html`<ol class="rows" aria-label="Working">${worked.working.map(
            (/** @type {any} */ step, /** @type {number} */ at) => html`<li class="row" key=${at}><span class="row-words">${step.text}</span>= ${step.shown}</li>`,
          )}</ol>`
        : null
    }`;
}

/** @param {{kept: any}} props */
function Note({ kept: { sum, of, text, note } }) {
  const { journal, act } = useNotebook();
  const [typed, setTyped] = useState(note);
  const save = () => act(() => saySum(journal, { id: sum, of, text, note: typed.trim() }), `${text}: note`);
  return html`<div class="setting">
    <${Field} label="Note" value=${typed} onInput=${setTyped} holds="what it was for" hint="" onEnter=${save} />
    <${Button} label="Save the note" disabled=${typed.trim() === note} onTouch=${save}>Save<//>
  </div>`;
}

/** @param {{kept: any}} props */
function Onward({ kept: { text, reading } }) {
  const on = (/** @type {() => void} */ doing) => () => {
    doing();
    go("sums");
  };
  return html`<div class="side-by-side">
    <${Button} onTouch=${on(() => beginWith(text))}>Use it again<//>
    ${reading ? html`<${Button} onTouch=${on(() => bring(reading))}>Bring ${reading} into a sum<//>` : null}
  </div>`;
}

/** What it comes to, in a reading of the room: those that are wanted first. @param {{kept: any}} props */
function IntoReading({ kept: { reading, rounded, text } }) {
  const { journal, act, room } = useNotebook();
  const { answer } = useAnswer(room && reading ? { ask: "figures", room: room.id } : null);
  if (!reading) return html`<p class="pencil">No tape reads that, so it goes in no reading.</p>`;
  if (!answer?.figures.length) return null;
  const put = async (/** @type {any} */ figure) => {
    const stays = stayHere();
    const done = await act(() => addReading(journal, figure.of, figure.what, reading), `${figure.title}: ${reading}, from the sum ${text}`);
    if (done && stays()) go("survey", "row", figure.of, figure.what);
  };
  const [wanted, others] = [true, false].map((is) => answer.figures.filter((/** @type {any} */ one) => (one.state === "wanted") === is));
  return html`<section class="group">
    <h2>Put ${reading} in a reading</h2>
    ${rounded ? html`<p class="pencil">To the nearest 1/64, for it is no figure on a tape.</p>` : null}
    <${Readings} figures=${wanted} label="Readings wanted" onPick=${put} />
    <details class="more" open=${!wanted.length}><summary>Another reading of ${room.name}</summary>
      <${Readings} figures=${others} label="Other readings" onPick=${put} /></details>
  </section>`;
}

/** @param {{figures: any[], label: string, onPick: (figure: any) => void}} props */
export function Readings({ figures, label, onPick }) {
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
    const done = await act(() => strikeOut(journal, "sum", { sum }, "struck by hand").then(() => true), `${text}: struck`);
    if (done && stays()) go("sums");
  };
  return html`<div class="doing"><div class="last-row">
    <${Button} onTouch=${() => go("sums")}>Back<//>
    <${Button} onTouch=${strike}>Strike this sum<//>
  </div></div>`;
}
