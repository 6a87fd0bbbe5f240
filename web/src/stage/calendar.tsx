import { count, duration } from "../measure";
import type { Plan, Step } from "../plan";

export function CalendarDetail({ plan }: { plan: Plan }) {
  const { steps, hands_h, elapsed_h, finish } = plan.calendar;
  return (
    <>
      <p class="quiet">{duration(hands_h)} of work in {duration(elapsed_h)}{finish ? `, done ${finish}` : ""}.</p>
      <ol class="steps">{steps.map((s) => <One key={s.id} of={s} />)}</ol>
    </>
  );
}

function One({ of }: { of: Step }) {
  return (
    <li>
      <p class="step-time">{of.start === "" ? "no date" : of.start}<small>{of.end !== "" && ` to ${endOf(of)}`}</small></p>
      <p class="step-title"><b>{of.number}</b> {of.title}</p>
      <p class="step-work">
        {duration(of.work_h)} of work{whoText(of)}
        {of.wait_h > 0 && `, then wait ${duration(of.wait_h)} for ${of.wait_for}`}
        {of.latest_h > 0 && `; the next step starts within ${duration(of.latest_h)}`}
      </p>
      {of.off_hours && <p class="step-caution">Outside the shop's hours: have somebody there.</p>}
      {of.cautions.map((c) => <p key={c} class="step-caution">{c}</p>)}
    </li>
  );
}

// whoText says who does a step, where that is more than the maker alone.
export function whoText(s: Step): string {
  const who = s.who ?? [];
  if (who.length > 1) return ` for ${who.slice(0, -1).join(", ")} and ${who.at(-1)}`;
  return (s.hands ?? 1) > 1 ? ` for ${count(s.hands ?? 1, "person", "people")}` : "";
}

// endOf drops the date where the work ends on the day it starts.
function endOf(s: Step): string {
  const day = s.start.replace(/ \S+$/, " ");
  return day !== "" && s.end.startsWith(day) ? s.end.slice(day.length) : s.end;
}
