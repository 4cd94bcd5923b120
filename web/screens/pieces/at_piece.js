// @ts-check
// A tape held to a piece, or to the place it goes: what it says is kept as typed, and the engine tells what follows.
import { html, useState } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { go, goInstead, stayHere } from "../../controls/route.js";
import { Drawing } from "../../drawings/drawing.js";
import { Places, useDrawn } from "../../drawings/drawn.js";
import { Page } from "../../frame/page.js";
import { useLengths, useNotebook } from "../../notebook/notebook.js";
import { addReading, asWritten, markPiece } from "../../notebook/write.js";
import { Echo, Typed, useEcho } from "../../pad/echo.js";
import { Tape } from "../../pad/tape.js";
import { say } from "../../words/words.js";

/** How long the board came out. @param {{piece: any, back?: string[]}} props `back`: where one came from */
export function AsCut({ piece, back }) {
  const save = (journal, text) => markPiece(journal, piece, "cut", text);
  return html`<${Taped} piece=${piece} title=${say("at-piece-cut", { letter: piece.letter })} save=${save}
    back=${back} hint=${say("at-piece-cut.hint", { edge: piece.cut_from })} />`;
}

/** How long the place is where it goes. @param {{piece: any}} props */
export function InPlace({ piece }) {
  const save = (journal, text) => addReading(journal, piece.place_of, "in_place", text);
  return html`<${Taped} piece=${piece} title=${say("at-piece-place", { letter: piece.letter })} save=${save} hint=${piece.place_hint}>
    <${Hanging} piece=${piece} /><//>`;
}

/** How long what is there already is. @param {{piece: any}} props */
export function There({ piece }) {
  const save = (journal, text) => addReading(journal, piece.place_of, "salvaged", text);
  return html`<${Taped} piece=${piece} title=${say("at-piece-there", { letter: piece.letter })} save=${save} kind="salvaged"
    hint=${piece.there_hint}><${Hanging} piece=${piece} /><//>`;
}

/** The place that the tape is held to. @param {{piece: any}} props */
function Hanging({ piece: { key, letter } }) {
  const drawn = useDrawn({ key });
  return drawn ? html`<${Drawing} svg=${drawn.hanging} kind="large-piece" label=${say("fit-hangs", { letter })} />` : null;
}

/** @param {{piece: any, title: string, hint: string, kind?: string, back?: string[], save: (journal: any, text: string) => Promise<any>, children?: any}} props */
function Taped({ piece, title, hint, kind = "length", save, back = ["pieces", piece.letter], children }) {
  const { journal, act } = useNotebook();
  const [text, setText] = useState("");
  const [refused, setRefused] = useState(false);
  const written = asWritten(text, useLengths());
  const echo = useEcho(kind, written, "inside");
  const keep = async () => {
    const stays = stayHere();
    const saved = await act(() => save(journal, written), say("named", { name: title, text: written }));
    if (saved && stays()) goInstead(...back);
  };
  const enter = () => (echo.error ? setRefused(true) : keep());
  const change = (typed) => {
    setRefused(false);
    setText(typed);
  };
  return html`<${Page} title=${title} aside=${piece.part_name} kind="entry" view=${html`<${Places} piece=${piece} />`}>
    <section class="reading">
      ${children}
      <${Typed} text=${written} what=${kind} hint=${hint} />
      <${Echo} echo=${echo} text=${written} refused=${refused} />
    </section>
    <section class="pad" aria-label=${say("at-piece")}>
      <${Tape} text=${text} onText=${change} onEnter=${enter} />
      <div class="last-row">
        <${Button} onTouch=${() => go(...back)}>${say("back")}<//>
        <${Button} kind="main" disabled=${!text.trim()} onTouch=${enter} next=${say("at-piece.next")}>${say("save")}<//>
      </div>
    </section>
  <//>`;
}
