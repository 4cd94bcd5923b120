// @ts-check
// A free piece: any run of stock that no rule gives, its length a sum that may name figures of the room.
import { html, useState } from "../../controls/ui.js";
import { Button, Field } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { go, stayHere } from "../../controls/route.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { sayFree, strikeOut } from "../../notebook/write.js";

const BLANK = { name: "", profile: "", text: "", count: "1" };

/** @param {{id: string}} props the piece to say again, or "new" */
export function FreePiece({ id }) {
  const { room } = useNotebook();
  const { answer } = useAnswer({ ask: "free", room: room.id });
  const known = answer?.free.find((one) => one.id === id);
  return html`<${Page} title="A piece of your own" tab="pieces" kind="form">
    ${answer ? html`<${Form} known=${known} asked=${answer} key=${id} />` : html`<${Asleep} what="A piece of your own" />`}
  <//>`;
}

/** @param {{known: any, asked: any}} props */
function Form({ known, asked }) {
  const { room, journal, act } = useNotebook();
  const [said, setSaid] = useState(known ? pick(known) : BLANK);
  const { answer } = useAnswer({ ask: "free", room: room.id, text: said.text });
  const trial = answer?.trial ?? null;
  const put = (/** @type {object} */ change) => setSaid({ ...said, ...change });
  const ready = said.name.trim() && said.profile.trim() && /^[1-9]\d{0,2}$/.test(said.count) && trial?.length;
  const save = async () => {
    const stays = stayHere();
    if ((await act(() => sayFree(journal, room.id, known ?? {}, said), said.name)) && stays()) go("pieces");
  };
  const drop = async () => {
    const stays = stayHere();
    const done = await act(() => strikeOut(journal, "free", { free: known.id }, "not wanted"), `${known.name} struck`);
    if (done !== null && stays()) go("pieces");
  };
  return html`
    <${Field} label="What it is" value=${said.name} onInput=${(name) => put({ name })} hint="shelf, ledger, filler strip" />
    <${Field} label="Its stock" value=${said.profile} onInput=${(profile) => put({ profile })}
      hint="a profile by its name, for the boards: shelf 3/4 × 9 1/2" />
    <div class="signs profiles" role="group" aria-label="stock in this room">
      ${asked.profiles.map((name) => html`<${Button} onTouch=${() => put({ profile: name })} key=${name}>${name}<//>`)}
    </div>
    <${Field} label="Its length" value=${said.text} onInput=${(text) => put({ text })} wrong=${said.text && trial?.message}
      hint="a sum, which may name what was read: wall 3 − 1/4" />
    ${trial?.length ? html`<p class="hero" role="status"><${Figure} shown=${trial.length.shown} size="big" /></p>` : null}
    <details class="more">
      <summary>Figures of this room</summary>
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
    <${Field} label="How many" value=${said.count} mode="numeric" onInput=${(count) => put({ count })} hint="all alike" />
    <div class="low">
      ${known ? html`<${Button} onTouch=${drop}>Strike it<//>` : null}
      <div class="last-row">
        <${Button} onTouch=${() => go("pieces")}>Back<//>
        <${Button} kind="main" disabled=${!ready} onTouch=${save}>Save<//>
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
