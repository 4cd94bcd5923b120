// @ts-check
// The list of readings, wall by wall. A long one shows first what wants a look, then what is to read; what is read is folded
// under its wall, and all of it is searched.
import { html, useState } from "../../controls/ui.js";
import { Find, isFound } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { go, link } from "../../controls/route.js";
import { Elevation } from "../../drawings/drawn.js";
import { say, sayWith } from "../../words/words.js";

/** More lines than this are folded: about three walls with their openings. */
const MANY = 24;
/** The walls that were unfolded: who comes back from a reading finds them so. @type {Set<string>} */
const unfolded = new Set();

/** @param {any} row */
const isShown = (row) => row.wanted || row.unread || row.readings.length || row.state === "check";
/** @param {any} row */
const isToRead = (row) => row.state !== "check" && (row.wanted || row.unread);
/** @param {any} row */
const isDone = (row) => row.state !== "check" && !isToRead(row);

/** @param {{rows: any[], chosen?: string}} props `chosen`: the one that stands beside the list */
export function Readings({ rows, chosen }) {
  const [words, setWords] = useState("");
  const shown = rows.filter(isShown);
  const others = rows.filter((row) => !isShown(row));
  const rest = others.length
    ? html`<details class="more"><summary>${say("readings-others")}</summary><${Lines} rows=${others} chosen=${chosen} /></details>`
    : null;
  if (shown.length <= MANY) return html`<${Lines} rows=${shown} chosen=${chosen} />${rest}`;
  const found = words.trim() ? rows.filter((row) => isFound(say("readings-line.sought", { wall: row.number, title: row.title }), words)) : null;
  return html`<${Find} label=${say("readings-find")} hint=${say("readings-find.hint")} value=${words} onInput=${setWords}
      onEnter=${() => found?.[0] && go("survey", "row", found[0].of, found[0].what)} none=${found?.length === 0} />
    ${found ? html`<${Lines} rows=${found} chosen=${chosen} />` : html`<${Groups} rows=${shown} chosen=${chosen} />${rest}`}`;
}

/** @param {{rows: any[], chosen?: string}} props */
function Groups({ rows, chosen }) {
  const done = Map.groupBy(rows.filter(isDone), (row) => row.wall);
  return html`
    <${Group} name=${say("look-first")} rows=${rows.filter(({ state }) => state === "check")} chosen=${chosen} />
    <${Group} name=${say("to-read")} rows=${rows.filter(isToRead)} chosen=${chosen} />
    <section class="group" aria-label=${say("readings-read")}><h2>${say("readings-read")} <small>${[...done.values()].flat().length}</small></h2>
      <div class="folds">${[...done.entries()].map(([wall, some]) => html`<${Wall} ...${{ wall, chosen }} rows=${some} key=${wall} />`)}</div>
    </section>`;
}

/** @param {{name: string, rows: any[], chosen?: string}} props */
function Group({ name, rows, chosen }) {
  if (!rows.length) return null;
  return html`<section class="group" aria-label=${name}><h2>${name} <small>${rows.length}</small></h2>
    <${Lines} rows=${rows} chosen=${chosen} /></section>`;
}

/** What is read of one wall. @param {{wall: string, rows: any[], chosen?: string}} props */
function Wall({ wall, rows, chosen }) {
  const [isOpen, setOpen] = useState(unfolded.has(wall) || rows.some(({ key }) => key === chosen));
  const fold = (/** @type {any} */ { currentTarget: { open } }) => {
    setOpen(open);
    open ? unfolded.add(wall) : unfolded.delete(wall);
  };
  return html`<details class="more for-paper" data-wall=${wall} open=${isOpen} onToggle=${fold}>
    <summary><b>${say("survey-wall", { wall: rows[0].number })}</b><small>${rows.length}</small></summary>
    ${isOpen ? html`<${Elevation} wall=${{ id: wall, number: rows[0].number }} />` : null}
    <${Lines} rows=${rows} chosen=${chosen} />
  </details>`;
}

/** @param {{rows: any[], chosen?: string}} props */
function Lines({ rows, chosen }) {
  const isFirst = (/** @type {number} */ place) => rows[place].wall !== rows[place - 1]?.wall;
  return html`<ul class="rows">
    ${rows.map((row, place) => html`<${Line} row=${row} chosen=${row.key === chosen} first=${isFirst(place)} key=${row.key} />`)}
  </ul>`;
}

/** @param {{row: any, first: boolean, chosen: boolean}} props `first` of its wall, where the wall's number stands */
function Line({ row, first, chosen }) {
  const note = row.note || say(row.wanted ? "readings-line.wanted" : "readings-line.unread");
  const wall = html`<span class="heard">${say("readings-line.wall", { wall: row.number })}</span>`;
  return html`<li data-wall=${row.wall}>
    <a class="row row-${row.state}" href=${link("survey", "row", row.of, row.what)} aria-current=${chosen ? "true" : null}>
      <span class="wall-number" aria-hidden="true">${first ? row.number : ""}</span>
      <span class="row-words"><span>${row.short ? sayWith("readings-line", { wall }, { title: row.short }) : row.title}</span><small>${note}</small></span>
      <${Figure} shown=${row.figure?.shown ?? ""} />
    </a>
  </li>`;
}
