// @ts-check
// Issuing the list: from then on each piece has its letter for good. It says what it does before it is touched.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { ask } from "../../notebook/answers.js";
import { useNotebook } from "../../notebook/notebook.js";
import { issueList } from "../../notebook/write.js";
import { say } from "../../words/words.js";

/** @param {{answer: any}} props the room's pieces as the engine answered them */
export function Issue({ answer }) {
  const { room, journal, services, act, fail } = useNotebook();
  if (!answer.to_issue) return null;
  const issue = async () => {
    const question = { ask: "issue", room: room.id, list: journal.newId() };
    const { answer: found, error } = await ask(services.engine, question);
    if (error) return fail(error.message);
    return act(() => issueList(journal, found.bodies), say("issue.done"));
  };
  return html`<${Button} kind="main" next=${answer.issue_words} onTouch=${issue}>
    ${say("issue")}<//>`;
}
