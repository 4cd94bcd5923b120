// @ts-check
// Several rooms planned at once: which rooms, what to buy for them, and settling on it for all of them.
import { html, useState } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Refusal } from "../../controls/notes.js";
import { link } from "../../controls/route.js";
import { useWide } from "../../controls/wide.js";
import { Cautions } from "../../frame/cautions.js";
import { Asleep, NoRoom } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useLongerLook } from "../../notebook/longer.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { strikeAll } from "../../notebook/write.js";
import { say } from "../../words/words.js";
import { Missing } from "./missing.js";
import { AllTogether, Plan } from "./plan.js";

export function HouseBoards() {
  const { room } = useNotebook();
  const [rooms, setRooms] = useState(/** @type {string[] | null} */ (null));
  const some = rooms?.length ? { rooms } : {};
  const question = room ? { ask: "boards_for_house", house: room.house, ...some } : null;
  const { answer, error, heard, older } = useAnswer(question);
  const look = useLongerLook(question);
  const wide = useWide();
  if (!room) return html`<${Page} title=${say("screen-boards")} tab="boards"><${NoRoom} /><//>`;
  const which = html`<p class="onward"><a href=${link("boards")}>${say("boards-house.back", { room: room.name })}</a></p>
    ${heard ? null : html`<${Asleep} what=${say("boards-asleep")} />`}
    <${Refusal} error=${error} />
    ${answer ? html`<${Rooms} rooms=${answer.rooms} onChoose=${setRooms} />` : null}`;
  return html`<${Page} title=${say("boards-house")} tab="boards" kind=${wide ? "boards table" : "boards"} older=${older} of=${room.house}>
    ${wide ? html`<div class="beside"><div class="part">${which}</div></div>` : which}
    ${answer ? html`<${Answered} answer=${look.found ?? answer} look=${look} older=${older} />` : null}
  <//>`;
}

/** The rooms of the plan; one at the least. @param {{rooms: any[], onChoose: (ids: string[]) => void}} props */
function Rooms({ rooms, onChoose }) {
  const chosen = rooms.filter((one) => one.chosen).map((one) => one.id);
  const turn = (/** @type {any} */ one) =>
    onChoose(one.chosen ? chosen.filter((id) => id !== one.id) : [...chosen, one.id]);
  return html`<fieldset class="choice"><legend>${say("boards-house.rooms")}</legend>
    <div class="choice-row">
    ${rooms.map(
      (one) => html`<${Button} key=${one.id} pressed=${one.chosen} onTouch=${() => turn(one)}
        disabled=${one.chosen && chosen.length === 1}>${one.mark}. ${one.name}<//>`,
    )}
    </div>
  </fieldset>`;
}

/** @param {{answer: any, look: any, older: boolean}} props */
function Answered({ answer, look, older }) {
  // A plan of before the last entries is there to be read, not to be settled on.
  const plans = older ? answer.plans.map((/** @type {any} */ plan) => ({ ...plan, accept: null })) : answer.plans;
  return html`
    ${plans.map((/** @type {any} */ plan) => html`<${Plan} plan=${plan} look=${look} key=${plan.profile} />`)}
    ${plans.length > 1 ? html`<${AllTogether} total=${answer.total} />` : null}
    ${answer.missing.length ? html`<${Missing} missing=${answer.missing} />` : null}
    ${answer.accepted.length && !older ? html`<${Apart} entries=${answer.accepted} />` : null}
    <${Cautions} cautions=${answer.cautions} />`;
}

/** Giving a plan of several rooms up. @param {{entries: string[]}} props */
function Apart({ entries }) {
  const { journal, act } = useNotebook();
  const apart = () => act(() => strikeAll(journal, entries, "planned room by room"), say("boards-apart.done"));
  return html`<${Button} onTouch=${apart} next=${say("boards-apart.next")}>
    ${say("boards-apart")}<//>`;
}
