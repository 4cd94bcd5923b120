// @ts-check
// Other lengths: what it would change to buy only one length, or to have one more to choose from. Asked for, not shown at once.
import { html, useState } from "../../controls/ui.js";
import { Button, Field } from "../../controls/controls.js";
import { Refusal } from "../../controls/notes.js";
import { useAnswer, useLengths, useNotebook } from "../../notebook/notebook.js";
import { asWritten } from "../../notebook/write.js";
import { say } from "../../words/words.js";

/** @param {{profile: string}} props */
export function OtherLengths({ profile }) {
  const { room } = useNotebook();
  const [open, setOpen] = useState(false);
  const [more, setMore] = useState({});
  const question = { ask: "boards_if", room: room.id, profile, time_limit: 0.2, ...more };
  const { answer, error } = useAnswer(open ? question : null);
  return html`<details class="more" onToggle=${(event) => setOpen(event.currentTarget.open)}>
    <summary>${say("boards-lengths")}</summary>
    <${Refusal} error=${error} />
    ${open && !answer && !error ? html`<p class="pencil" role="status">${say("boards-lengths.asleep")}</p>` : null}
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
  const lengths = useLengths();
  return html`<div class="form-row">
    <${Field} label=${say("boards-length")} value=${length} onInput=${setLength} hint=${say("boards-length.hint")} />
    <${Field} label=${say("boards-length-price")} value=${price} onInput=${setPrice} mode="decimal"
      hint=${say("boards-length-price.hint")} />
    <${Button} disabled=${!length || !price} onTouch=${() => onAsk({ length: asWritten(length, lengths), price })}>${say("boards-length.try")}<//>
  </div>`;
}
