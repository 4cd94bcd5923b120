// @ts-check
// A free piece: any run of stock that no rule gives, its length a sum that may name figures of the room.
import { html, useState } from "../../controls/ui.js";
import { Button, Field } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { go, stayHere } from "../../controls/route.js";
import { RoomInView } from "../../drawings/drawn.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { MILLIMETERS, useAnswer, useLengths, useNotebook } from "../../notebook/notebook.js";
import { sayFree, strikeOut } from "../../notebook/write.js";
import { say } from "../../words/words.js";

const BLANK = { name: "", profile: "", text: "", count: "1" };

/** @param {{id: string}} props the piece to say again, or "new" */
export function FreePiece({ id }) {
  const { room } = useNotebook();
  const { answer } = useAnswer({ ask: "free", room: room.id });
  const known = answer?.free.find((one) => one.id === id);
  return html`<${Page} title=${say("free")} tab="pieces" kind="form" view=${html`<${RoomInView} />`}>
    ${answer ? html`<${Form} known=${known} asked=${answer} key=${id} />` : html`<${Asleep} what=${say("free")} one />`}
  <//>`;
}

/** @param {{known: any, asked: any}} props */
function Form({ known, asked }) {
  const { room, journal, act } = useNotebook();
  const [said, setSaid] = useState(known ? pick(known) : BLANK);
  // A sum that was kept in inches stays in them.
  const bare = useLengths() === MILLIMETERS && said.text !== known?.text ? { bare: MILLIMETERS } : {};
  const { answer } = useAnswer({ ask: "free", room: room.id, text: said.text, ...bare });
  const trial = answer?.trial ?? null;
  const put = (/** @type {object} */ change) => setSaid({ ...said, ...change });
  const ready = said.name.trim() && said.profile.trim() && /^[1-9]\d{0,2}$/.test(said.count) && trial?.length;
  const save = async () => {
    const stays = stayHere();
    if ((await act(() => sayFree(journal, room.id, known ?? {}, { ...said, text: trial.written }), said.name)) && stays()) go("pieces");
  };
  const drop = async () => {
    const stays = stayHere();
    const struck = say("strike.done", { what: known.name });
    const done = await act(() => strikeOut(journal, "free", { free: known.id }, "not wanted"), struck);
    if (done !== null && stays()) go("pieces");
  };
  return html`
    <${Field} label=${say("free-name")} value=${said.name} onInput=${(name) => put({ name })} hint=${say("free-name.hint")} />
    <${Field} label=${say("free-stock")} value=${said.profile} onInput=${(profile) => put({ profile })}
      hint=${say("free-stock.hint")} />
    <div class="signs profiles" role="group" aria-label=${say("free-stock.here")}>
      ${asked.profiles.map((name, at) => html`<${Button} onTouch=${() => put({ profile: name })} key=${name}>${asked.profiles_shown[at]}<//>`)}
    </div>
    <${Field} label=${say("free-length")} value=${said.text} onInput=${(text) => put({ text })} wrong=${said.text && trial?.message}
      hint=${say("free-length.hint")} />
    ${trial?.length ? html`<p class="hero" role="status"><${Figure} shown=${trial.length.shown} size="big" /></p>` : null}
    <details class="more">
      <summary>${say("free-figures")}</summary>
      <ul class="rows">
        ${asked.names.map(
          ({ name, length }) => html`<li key=${name}>
            <button class="row" onClick=${() => put({ text: joined(said.text, name) })}>
              <span class="row-words">${name}</span><${Figure} shown=${length.shown} />
            </button>
          </li>`,
        )}
      </ul>
    </details>
    <${Field} label=${say("free-count")} value=${said.count} mode="numeric" onInput=${(count) => put({ count })}
      hint=${say("free-count.hint")} />
    <div class="low">
      ${known ? html`<${Button} onTouch=${drop}>${say("strike.it")}<//>` : null}
      <div class="last-row">
        <${Button} onTouch=${() => go("pieces")}>${say("back")}<//>
        <${Button} kind="main" disabled=${!ready} onTouch=${save}>${say("save")}<//>
      </div>
    </div>`;
}

/** @param {any} known */
function pick({ name, profile, text, count }) {
  return { name, profile, text, count };
}

/** A name added to a sum: after a sign, or as the first thing in it. @param {string} text @param {string} name */
function joined(text, name) {
  return text && !text.endsWith(" ") ? `${text} ${name}` : text + name;
}
