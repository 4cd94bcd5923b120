// @ts-check
// Boards: what a room needs bought, profile by profile; and the way to a plan of several rooms at once.
import { html } from "../../controls/ui.js";
import { Problems, Refusal } from "../../controls/notes.js";
import { link } from "../../controls/route.js";
import { useWide } from "../../controls/wide.js";
import { Places } from "../../drawings/drawn.js";
import { Cautions } from "../../frame/cautions.js";
import { Asleep, NoRoom } from "../../frame/empty.js";
import { ListFiles } from "../../frame/list_files.js";
import { Page } from "../../frame/page.js";
import { useLongerLook } from "../../notebook/longer.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { say } from "../../words/words.js";
import { HouseBoards } from "./house.js";
import { OtherLengths } from "./lengths.js";
import { Missing } from "./missing.js";
import { AllTogether, Plan } from "./plan.js";

/** @param {{place: string[]}} props */
export function Boards({ place }) {
  return place[0] === "house" ? html`<${HouseBoards} />` : html`<${RoomBoards} />`;
}

function RoomBoards() {
  const { room, outline } = useNotebook();
  const question = room ? { ask: "boards_for_room", room: room.id } : null;
  const { answer, error, heard, older } = useAnswer(question);
  const look = useLongerLook(question);
  const wide = useWide();
  if (!room) return html`<${Page} title=${say("screen-boards")} tab="boards"><${NoRoom} /><//>`;
  return html`<${Page} title=${say("boards-title", { room: room.name })} tab="boards" kind="boards table" older=${older}>
    ${heard ? null : html`<${Asleep} what=${say("boards-asleep")} />`}
    <${Refusal} error=${error} />
    ${wide ? html`<div class="beside"><${Places} /></div>` : null}
    ${answer ? html`<${Answered} answer=${look.found ?? answer} look=${look} older=${older} />` : null}
    ${
      outline.rooms.size > 1
        ? html`<p class="onward"><a href=${link("boards", "house")}>${say("boards-house.way")}</a></p>`
        : null
    }
  <//>`;
}

/** @param {{answer: any, look: any, older: boolean}} props */
function Answered({ answer, look, older }) {
  const { missing, elsewhere } = answer;
  // A plan of before the last entries is there to be read, not to be settled on.
  const plans = older ? answer.plans.map((/** @type {any} */ plan) => ({ ...plan, accept: null })) : answer.plans;
  return html`
    ${plans.map((plan) => html`<${Plan} plan=${plan} look=${look} key=${plan.profile}>
      <${OtherLengths} profile=${plan.profile} /><//>`)}
    ${plans.length > 1 ? html`<${AllTogether} total=${answer.total} />` : null}
    <${Problems} problems=${answer.problems} />
    ${elsewhere.length ? html`<p>${say("boards-elsewhere", { letters: elsewhere.join(", ") })}</p>` : null}
    ${missing.length || !(plans.length || elsewhere.length) ? html`<${Missing} missing=${missing} unpriced=${older ? [] : answer.unpriced} />` : null}
    ${plans.length ? html`<${ListFiles} of="boards" />` : null}
    <${Cautions} cautions=${answer.cautions} />`;
}
