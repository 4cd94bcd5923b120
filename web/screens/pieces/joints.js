// @ts-check
// What a person decides of a piece's joints: which board runs through in a corner, and how thick its stick really is.
import { html, useState } from "../../controls/ui.js";
import { Button, Field } from "../../controls/controls.js";
import { go, stayHere } from "../../controls/route.js";
import { useLengths, useNotebook } from "../../notebook/notebook.js";
import { asWritten, setSetting } from "../../notebook/write.js";
import { say } from "../../words/words.js";

/** @param {any} piece */
const isCut = (piece) => piece.state === "cut" || piece.state === "fitted";

/** Which board runs through in each of its corners, to be turned round. @param {{piece: any}} props */
export function Turns({ piece }) {
  const { journal, act } = useNotebook();
  const turns = [piece.left, piece.right].map((end) => end.turns).filter(Boolean);
  if (!turns.length || isCut(piece)) return null;
  const turn = async (/** @type {any} */ one) => {
    const stays = stayHere();
    const turned = await act(() => setSetting(journal, one.of, one.name, one.value), one.words);
    if (turned && piece.provisional && stays()) go("pieces"); // the order of fitting changes, and provisional letters with it
  };
  return html`<details class="more"><summary>${say("joints-turn")}</summary>
    <div class="choice-row">
      ${turns.map((one) => html`<${Button} key=${one.words} onTouch=${() => turn(one)}>${one.words}<//>`)}
    </div>
  </details>`;
}

/** How thick the boards along its wall were found, where that is not the profile's. @param {{piece: any}} props */
export function Stick({ piece }) {
  const { journal, act } = useNotebook();
  const { stick } = piece;
  const [text, setText] = useState(stick?.value ?? "");
  const lengths = useLengths();
  if (!stick || isCut(piece)) return null;
  const said = say("named", { name: stick.words, text: text || say("joints-stick.profile") });
  const save = () => act(() => setSetting(journal, stick.of, stick.name, asWritten(text.trim(), lengths)), said);
  return html`<details class="more"><summary>${say("joints-stick")}</summary>
    <div class="form-row">
      <${Field} label=${stick.words} value=${text} onInput=${setText} hint=${say("joints-stick.hint")} />
      <${Button} disabled=${text.trim() === stick.value} onTouch=${save}>${say("save")}<//>
    </div>
  </details>`;
}
