// @ts-check
// Other lengths: what it would change to buy only one length, or to have one more to choose from. Asked for, not shown at once.
import { html, useState } from "../../controls/ui.js";
import { Button, Field } from "../../controls/controls.js";
import { Refusal } from "../../controls/notes.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";

/** @param {{profile: string}} props */
export function OtherLengths({ profile }) {
  const { room } = useNotebook();
  const [open, setOpen] = useState(false);
  const [more, setMore] = useState({});
  const question = { ask: "boards_if", room: room.id, profile, time_limit: 0.2, ...more };
  const { answer, error } = useAnswer(open ? question : null);
  return html`<details class="more" onToggle=${(event) => setOpen(event.currentTarget.open)}>
    <summary>What other lengths would change</summary>
    <${Refusal} error=${error} />
    ${open && !answer && !error ? html`<p class="pencil" role="status">Working it out.</p>` : null}
    ${
      answer
        ? html`<ul class="rows">
      ${answer.single.map((one) => html`<li class="row" key=${one.words}>${one.words}</li>`)}
      ${answer.more ? html`<li class="row">${answer.more.words}</li>` : null}
    </ul>`
        : null
    }
    <${OneMore} onAsk=${setMore} />
  </details>`;
}

/** @param {{onAsk: (more: object) => void}} props */
function OneMore({ onAsk }) {
  const [length, setLength] = useState("");
  const [price, setPrice] = useState("");
  return html`<div class="form-row">
    <${Field} label="One more length" value=${length} onInput=${setLength} hint="such as 14 ft" />
    <${Field} label="At a price of" value=${price} onInput=${setPrice} hint="such as 19.98" mode="decimal" />
    <${Button} disabled=${!length || !price} onTouch=${() => onAsk({ length, price })}>Try it<//>
  </div>`;
}
