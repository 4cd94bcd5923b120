// @ts-check
// A tape held to a piece, or to the place it goes: what it says is kept as typed, and the engine tells what follows.
import { html, useState } from "../parts/ui.js";
import { Button } from "../parts/controls.js";
import { useNotebook } from "../parts/notebook.js";
import { Page } from "../parts/page.js";
import { go, goInstead } from "../parts/route.js";
import { addReading, markPiece } from "../parts/write.js";
import { Echo, Tape, Typed, useEcho } from "./reading.js";

/** How long the board came out. @param {{piece: any}} props */
export function AsCut({ piece }) {
  const save = (journal, text) => markPiece(journal, piece, "cut", text);
  return html`<${Taped} piece=${piece} title=${`${piece.letter} as cut`} save=${save}
    hint=${`Hold the tape ${piece.cut_from === "square, either edge" ? "along either edge" : piece.cut_from}.`} />`;
}

/** How long the place is where it goes. @param {{piece: any}} props */
export function InPlace({ piece }) {
  const save = (journal, text) => addReading(journal, piece.id, "in_place", text);
  return html`<${Taped} piece=${piece} title=${`${piece.letter} in place`} save=${save} hint=${piece.place_hint} />`;
}

/** @param {{piece: any, title: string, hint: string, save: (journal: any, text: string) => Promise<any>}} props */
function Taped({ piece, title, hint, save }) {
  const { journal, act } = useNotebook();
  const [text, setText] = useState("");
  const [refused, setRefused] = useState(false);
  const echo = useEcho("length", text, "inside");
  const keep = async () => {
    const saved = await act(() => save(journal, text), `${title}: ${text}`);
    if (saved) goInstead("pieces", piece.letter);
  };
  const enter = () => (echo.error ? setRefused(true) : keep());
  const change = (typed) => {
    setRefused(false);
    setText(typed);
  };
  return html`<${Page} title=${title} aside=${piece.part_name} kind="entry">
    <section class="reading">
      <${Typed} text=${text} what="length" hint=${hint} />
      <${Echo} echo=${echo} text=${text} refused=${refused} />
    </section>
    <section class="pad" aria-label="Enter the reading">
      <${Tape} text=${text} onText=${change} onEnter=${enter} />
      <div class="last-row">
        <${Button} onTouch=${() => go("pieces", piece.letter)}>Back<//>
        <${Button} kind="main" disabled=${!text.trim()} onTouch=${enter} next="then back to the piece">Save<//>
      </div>
    </section>
  <//>`;
}
