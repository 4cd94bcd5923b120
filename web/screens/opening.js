// @ts-check
// One door, window or cased opening: what it is to have otherwise than its room.
import { html } from "../parts/ui.js";
import { useAnswer, useNotebook } from "../parts/notebook.js";
import { Page } from "../parts/page.js";
import { link } from "../parts/route.js";
import { OfOpening } from "./standard.js";

/** @param {{place: string[]}} props */
export function Opening({ place: [id] }) {
  const { room } = useNotebook();
  const { answer } = useAnswer({ ask: "notebook" });
  const wall = room.walls.find((one) => one.openings.some((opening) => opening.id === id));
  if (!wall) {
    return html`<${Page} title="An opening" tab="survey">
      <p class="onward"><a href=${link("survey", "walk")}>Back to the walk</a></p>
    <//>`;
  }
  const opening = wall.openings.find((one) => one.id === id);
  const known = answer?.houses.find((one) => one.id === room.house);
  return html`<${OfOpening} wall=${wall} opening=${opening} known=${known} />`;
}
