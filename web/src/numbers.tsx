// The key numbers, large.

import { keyNumbers } from "./keynumbers";
import type { Plan } from "./plan";

export function Numbers({ plan }: { plan: Plan }) {
  const list = keyNumbers(plan);
  if (list.length === 0) return null;
  return (
    <section id="numbers" class={`numbers ${list.length % 3 === 0 ? "in-threes" : "in-fours"}`} aria-label="Key numbers">
      {list.map((k) => (
        <div key={k.id} class={`number number-${k.id}`}>
          <h2 class="label">{k.label}</h2>
          <p class="number-main">{numeral(k.main)}</p>
          {k.other && <p class="number-other">{k.other}</p>}
          {k.note && <p class="number-note">{k.note}</p>}
        </div>
      ))}
    </section>
  );
}

// numeral sets the digits large and the units beside them small.
function numeral(text: string) {
  return text.split(/((?:\d[\d.,/]*)(?: \d+\/\d+)?)/).map((part, i) => (i % 2 === 1 ? <b key={i}>{part}</b> : <span key={i}>{part}</span>));
}
