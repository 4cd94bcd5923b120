// @ts-check
// The cut list as a file for a spreadsheet, or with all that the engine says; the plan and each wall as a drawing.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { AsTable, give } from "../../frame/list_files.js";
import { ask } from "../../notebook/answers.js";
import { useNotebook } from "../../notebook/notebook.js";
import { say } from "../../words/words.js";

export function Files() {
  const { room, services, fail } = useNotebook();
  const save = async (/** @type {string} */ type, /** @type {(answer: any) => string} */ of, name = room.name) => {
    const { answer, error } = await ask(services.engine, { ask: "files", room: room.id });
    if (error) return fail(error.message);
    return give(`${name}.${type.split(/[/+]/)[1]}`, type, of(answer));
  };
  const saveWall = (/** @type {any} */ { id, number }) => {
    const of = (/** @type {any} */ { walls }) => walls.find((/** @type {any} */ { wall }) => wall === id).drawing;
    return save("image/svg+xml", of, say("piece-files-wall.file", { room: room.name, wall: number }));
  };
  return html`<details class="more"><summary>${say("list-files")}</summary><div class="now">
    <div class="side-by-side">
      <${AsTable} save=${save} />
      <${Button} onTouch=${() => save("image/svg+xml", (answer) => answer.plan)} next=${say("piece-files-svg.next")}>${say("piece-files-svg")}<//>
    </div>
    <p class="pencil">${say("piece-files-wall.all")}</p>
    <div class="choice-row numbers" role="group" aria-label=${say("piece-files-wall.all")}>
      ${room.walls.map((/** @type {any} */ wall) => html`<${Button} label=${say("piece-files-wall", { wall: wall.number })}
        onTouch=${() => saveWall(wall)} key=${wall.id}>${wall.number}<//>`)}
    </div></div></details>`;
}
