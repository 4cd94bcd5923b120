// @ts-check
// A list as a file for a spreadsheet, or with all that the engine says: the engine writes it, the page hands it over.
import { html } from "../controls/ui.js";
import { Button } from "../controls/controls.js";
import { ask } from "../notebook/answers.js";
import { useNotebook } from "../notebook/notebook.js";
import { say } from "../words/words.js";

/** Hands a text over as a file. @param {string} name @param {string} type @param {string} text */
export function give(name, type, text) {
  const way = document.createElement("a");
  way.href = URL.createObjectURL(new Blob([text], { type }));
  way.download = name;
  way.click();
  setTimeout(() => URL.revokeObjectURL(way.href), 60_000);
}

/** @param {{save: (type: string, of: (answer: any) => string) => any}} props */
export function AsTable({ save }) {
  return html`<${Button} onTouch=${() => save("text/csv", (answer) => answer.csv)} next=${say("list-files-csv.next")}>${say("list-files-csv")}<//>
    <${Button} onTouch=${() => save("application/json", (answer) => answer.json)} next=${say("list-files-json.next")}>${say("list-files-json")}<//>`;
}

/** @param {{of: "boards" | "strips" | "shopping" | "labels"}} props `of`: which list of the room in hand, as the engine names it */
export function ListFiles({ of }) {
  const { room, services, fail } = useNotebook();
  const save = async (/** @type {string} */ type, /** @type {(answer: any) => string} */ text) => {
    const { answer, error } = await ask(services.engine, { ask: "list_files", room: room.id, of });
    if (error) return fail(error.message);
    return give(`${say(`list-files-of-${of}`, { room: room.name })}.${type.split("/")[1]}`, type, text(answer));
  };
  return html`<details class="more"><summary>${say("list-files")}</summary>
    <div class="side-by-side"><${AsTable} save=${save} /></div></details>`;
}
