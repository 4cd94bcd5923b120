// @ts-check
// What the engine draws of a room's pieces: each large, at the saw and as it hangs, and all of them where they go. It is
// asked for where it is shown, so that the list of pieces stays light.
import { html, useState } from "../controls/ui.js";
import { useAnswer, useNotebook } from "../notebook/notebook.js";
import { useSurvey } from "../notebook/survey.js";
import { say } from "../words/words.js";
import { Closer } from "./closer.js";
import { Drawing } from "./drawing.js";

/** Still to come: its place is kept, or all that stands under it would move when it does. */
const COMING = { at_saw: "", hanging: "" };

/**
 * A piece of the room in hand drawn large; null where the engine does not say. @param {any} piece as `pieces` answers it
 */
export function useDrawn(piece) {
  const { room, engine } = useNotebook();
  const { answer, heard } = useAnswer({ ask: "drawn", room: room.id, piece: piece.key });
  return answer ?? (heard || engine.startsWith("failed") ? null : COMING);
}

/** @param {{piece: any, answer: any}} props what `useDrawn` gave */
export function PieceDrawn({ piece, answer }) {
  const { letter, left, right } = piece;
  if (!answer) return null;
  return html`<figure class="drawn">
      <figcaption>${say("drawn-at-saw")}</figcaption>
      <${Drawing} svg=${answer.at_saw} kind="large-piece"
        label=${say("drawn-at-saw.what", { letter, left: left.shown, right: right.shown })} />
    </figure>
    <figure class="drawn">
      <figcaption>${say("drawn-hanging")}</figcaption>
      <${Drawing} svg=${answer.hanging} kind="large-piece"
        label=${say("drawn-hanging.what", { letter, left: left.meets, right: right.meets })} />
    </figure>`;
}

/** One wall from in front. @param {{wall: any, letter?: string}} props `letter` of the piece in hand */
export function Elevation({ wall, letter }) {
  const { room } = useNotebook();
  const { answer } = useAnswer({ ask: "elevation", room: room.id, wall: wall.id });
  const label = say("drawn-wall", { wall: wall.number });
  return answer ? html`<${Closer} svg=${answer.drawing} label=${label} kind="plan" hand=${{ letter }} />` : null;
}

/** From above with one wall marked, and that wall from in front. @param {{wall?: any}} props */
export function RoomInView({ wall }) {
  const { room } = useNotebook();
  const { plan } = useSurvey(room.id);
  return html`
    ${plan ? html`<${Closer} svg=${plan} label=${say("survey-plan", { room: room.name })} kind="plan" hand=${{ wall: wall?.id }} />` : null}
    ${wall ? html`<${Elevation} wall=${wall} key=${wall.id} />` : null}`;
}

/**
 * The room with every piece lettered where it goes, and each wall from in front for whoever asks.
 * @param {{piece?: any}} props `piece` in hand, whose wall is shown from in front
 */
export function Places({ piece }) {
  const { room } = useNotebook();
  const { answer } = useAnswer({ ask: "plan", room: room.id });
  const [open, setOpen] = useState(false);
  if (!answer) return null;
  const wall = piece && room.walls.find(({ id, openings }) => id === piece.wall || openings.some((one) => one.id === piece.opening));
  return html`<section class="places">
    <h2>${say("drawn-places")}</h2>
    <${Closer} svg=${answer.drawing} label=${say("drawn-places.plan", { room: room.name })} kind="plan" hand=${{ letter: piece?.letter }} />
    ${wall ? html`<${Elevation} wall=${wall} letter=${piece.letter} />` : null}
    <details class="more" onToggle=${(event) => setOpen(event.currentTarget.open)}>
      <summary>${say("drawn-walls")}</summary>
      ${open ? room.walls.map((wall) => html`<${Elevation} wall=${wall} key=${wall.id} />`) : null}
    </details>
  </section>`;
}
