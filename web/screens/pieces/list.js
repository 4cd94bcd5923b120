// @ts-check
// The list of pieces: what wants attention first, then what is to cut by opening and wall; what is done is folded away. A
// long list is searched, by a letter or by words.
import { html, useState } from "../../controls/ui.js";
import { Button, Find } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { useNear } from "../../controls/near.js";
import { Problems } from "../../controls/notes.js";
import { go, link } from "../../controls/route.js";
import { Drawing } from "../../drawings/drawing.js";
import { Places } from "../../drawings/drawn.js";
import { Cautions } from "../../frame/cautions.js";
import { stateWords } from "../../notebook/listed.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { say } from "../../words/words.js";
import { Files } from "./files.js";
import { Issue } from "./issue.js";
import { withoutMark } from "./piece.js";

/** Rows whose drawings are asked for together: about what a phone shows at once. */
const AT_ONCE = 12;
/** No letters of a list are longer. */
const LETTERS = /^[a-z]{1,2}$/i;

/** @param {any} row */
const wantsLook = (row) => Boolean(row.change || row.flags.length);
/** @param {any} row */
const isToCut = ({ state }) => state === "to cut" || state === "recut";

/** Whether a row is looked for by these words, or by the beginning of its letter. @param {any} row @param {string} words */
function isFound({ letter, found_by: by }, words) {
  return LETTERS.test(words) ? letter.startsWith(words.toUpperCase()) : by.includes(words.toLowerCase());
}

/** @param {{answer: any, chosen?: string, wide: boolean}} props */
export function List({ answer, chosen, wide }) {
  const { gone, problems, warnings, cautions } = answer;
  const [words, setWords] = useState("");
  const rows = answer.rows.filter((/** @type {any} */ row) => isFound(row, words.trim()));
  const toCut = answer.rows.filter(isToCut).length;
  const group = (/** @type {string} */ name, /** @type {(row: any) => boolean} */ which, folded = false) => {
    const some = rows.filter(which);
    return some.length ? html`<${Group} ...${{ name, chosen }} rows=${some} folded=${folded && !words} key=${name} />` : null;
  };
  const isPlain = (/** @type {any} */ row) => !wantsLook(row);
  return html`
    <${Problems} problems=${[...problems, ...warnings.map((/** @type {string} */ message) => ({ key: message, message }))]} />
    ${answer.rows.length ? null : html`<${Nothing} />`}
    ${answer.rows.length > AT_ONCE ? html`<${Find} label=${say("pieces-find")} hint=${say("pieces-find.hint")} value=${words} onInput=${setWords}
      onEnter=${() => rows[0] && go("pieces", rows[0].letter)} none=${!rows.length} />` : null}
    ${answer.to_issue ? html`<p class="pencil">${say("pieces-broken-ring")}</p>` : null}
    ${group(say("look-first"), wantsLook)}
    ${group(say("pieces-to-cut"), (row) => isPlain(row) && isToCut(row))}
    ${group(say("pieces-cut"), (row) => isPlain(row) && row.state === "cut", true)}
    ${group(say("pieces-fitted"), (row) => isPlain(row) && row.state === "fitted", true)}
    <${Gone} gone=${gone} />
    <p class="onward"><a href=${link("pieces", "free", "new")}>${say("pieces-add")}</a>
      ${answer.rows.length ? html`<a href=${link("pieces", "fit")}>${say("pieces-fit")}</a>` : null}
      <a href=${link("pieces", "labels")}>${say("labels")}</a>
      <a href=${link("pieces", "walls")}>${say("walls")}</a></p>
    ${answer.rows.length ? html`<${Files} />` : null}
    ${answer.rows.length && !wide ? html`<${Places} />` : null}
    <${Cautions} cautions=${cautions} />
    ${answer.to_issue || toCut ? html`<div class="doing">
      <${Issue} answer=${answer} />
      ${toCut > answer.to_issue ? html`<${Button} kind=${answer.to_issue ? "side" : "main"} onTouch=${() => go("pieces", "saw")}
        next=${say("saw.next", { count: toCut })}>${say("saw")}<//>` : null}
    </div>` : null}`;
}

function Nothing() {
  return html`<div class="now">
    <h2>${say("pieces-none")}</h2>
    <p class="pencil">${say("pieces-none.hint")}</p>
    <p class="onward"><a href=${link("survey")}>${say("to-readings")}</a></p>
  </div>`;
}

/** @param {{name: string, rows: any[], chosen?: string, folded: boolean}} props `folded`: shown when it is asked for */
function Group({ name, rows, chosen, folded }) {
  const [{ plus_minus: first }] = rows;
  const alike = rows.length > 1 && rows.every((one) => one.plus_minus === first);
  const sheets = Array.from({ length: Math.ceil(rows.length / AT_ONCE) }, (_, n) => rows.slice(n * AT_ONCE, (n + 1) * AT_ONCE));
  const lines = html`<ol class="rows">${sheets.map((some) => html`<${Lines} ...${{ chosen, alike }} rows=${some} key=${some[0].key} />`)}</ol>`;
  const count = html`<small>${alike ? say("pieces-alike", { count: rows.length, length: withoutMark({ shown: first }) }) : rows.length}</small>`;
  return html`<section class="group" aria-label=${name}>
    ${folded ? html`<details class="more for-paper"><summary><b>${name}</b> ${count}</summary>${lines}</details>` : html`<h2>${name} ${count}</h2>${lines}`}
  </section>`;
}

/**
 * Some rows, whose drawings are asked for together, once one of them is near the window. Those of one opening or wall stand
 * under its name.
 * @param {{rows: any[], chosen?: string, alike: boolean}} props `alike`: the ± is said above all of them
 */
function Lines({ rows, chosen, alike }) {
  const { room } = useNotebook();
  const [first, near] = useNear();
  const { answer } = useAnswer(near ? { ask: "small_drawings", room: room.id, pieces: rows.map((row) => row.key) } : null);
  const drawings = new Map((answer?.drawings ?? []).map((one) => [one.key, one.drawing]));
  return rows.map((row, place) => {
    const grouped = [rows[place - 1], rows[place + 1]].some((one) => one?.group === row.group);
    const begins = grouped && rows[place - 1]?.group !== row.group;
    return html`${begins ? html`<li class="of" aria-hidden="true">${row.group_name}</li>` : null}
      <${PieceLine} ...${{ row, grouped, alike }} svg=${drawings.get(row.key)} chosen=${row.letter === chosen} near=${place ? null : first} key=${row.key} />`;
  });
}

/** @param {{row: any, svg: string | undefined, near: any, chosen: boolean, grouped: boolean, alike: boolean}} props */
function PieceLine({ row, svg, near, chosen, grouped, alike }) {
  const words = [row.state === "recut" ? stateWords(row.state) : "", row.ends].filter(Boolean).join(" · ");
  return html`<li ref=${near} data-letters=${row.letter}>
    <a class="row" href=${link("pieces", row.letter)} aria-current=${chosen ? "true" : null}>
      <span class="ring ${row.provisional ? "ring-provisional" : ""}">${row.letter}</span>
      ${row.provisional ? html`<span class="heard">${say("pieces-broken-ring.heard")}</span>` : null}
      <span class="row-words">
        <span>${grouped ? html`<span class="heard">${row.group_name}, </span>${row.short}` : row.part_name}</span>
        <small>${words}</small>
        <${Drawing} svg=${svg} kind="small-piece" />
        ${row.salvaged ? html`<small>${row.salvaged}</small>` : null}
        ${row.change ? html`<small class="wrong">${row.change}</small>` : null}
      </span>
      <span class="row-figure">
        <${Figure} shown=${row.cut} />
        ${alike ? null : html`<small>± ${withoutMark({ shown: row.plus_minus })}</small>`}
        ${row.blank ? html`<small>${say("pieces-blank", { length: withoutMark({ shown: row.blank }) })}</small>` : null}
      </span>
      ${row.flags.map((flag) => html`<small class="flag row-flag" key=${flag}>${flag}</small>`)}
    </a>
  </li>`;
}

/** What was issued and is not wanted any more. @param {{gone: any[]}} props */
function Gone({ gone }) {
  if (!gone.length) return null;
  return html`<section class="group" aria-label=${say("pieces-gone")}>
    <h2>${say("pieces-gone")} <small>${gone.length}</small></h2>
    <ul class="rows">
      ${gone.map(
        (one) => html`<li class="row" key=${one.id}>
        <span class="ring">${one.letter}</span>
        <span class="row-words"><span>${one.name}</span><small>${one.message}</small></span>
      </li>`,
      )}
    </ul>
  </section>`;
}
