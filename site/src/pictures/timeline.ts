// The tenancy and every legal day on one line, from top to bottom: the stay pressed together, the weeks after it to scale, years at the foot
// pressed together again. The words beside it are a list, so the picture needs no other text.

import { scaleTime } from 'd3-scale';
import { line } from 'd3-shape';
import { html, nothing, svg, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../app/desk';
import { daysBetween, shortDay } from '../say/show';
import { say } from '../say/wording';
import type { DutyState } from '../case/assessment';
import { isDay } from '../case/day';
import { spanInWords } from '../say/date-words';
import { stateMark } from '../parts/mark';
import './pictures.css';

interface Stop {
  day: string;
  label: string;
  when: string;
  state: DutyState | 'fact' | 'today';
  losesRightIfMissed?: boolean;
}

/** Days after move-out that are drawn to scale; what lies further off is pressed together at the foot. */
const nearDays = 150;
const rowHeight = 100;

function stopsOf(d: Desk): Stop[] {
  const t = d.case.tenancy ?? {};
  const s = d.case.statement ?? {};
  const fact = (value: unknown, key: string): Stop[] =>
    isDay(value) ? [{ day: value, label: say(`page.timeline.${key}`), when: shortDay(value), state: 'fact' }] : [];
  const duties = (d.result?.dates ?? [])
    .filter((x) => x.last?.latest && x.state !== 'not-needed')
    .map((x): Stop => ({
      day: x.last!.latest!,
      label: x.label,
      when: spanInWords(x.last!, shortDay),
      state: x.state,
      losesRightIfMissed: x.losesRightIfMissed && (x.state === 'open' || x.state === 'missed'),
    }));
  return [
    ...fact(t['began'], 'began'),
    ...fact(t['possessionReturned'] ?? t['ended'], 'left'),
    ...fact(s['sent'], 'sent'),
    ...fact(s['refundSent'], 'refund'),
    { day: d.today, label: say('page.timeline.today'), when: shortDay(d.today), state: 'today' } satisfies Stop,
    ...duties,
  ].sort((a, b) => a.day.localeCompare(b.day));
}

/** From days to heights: pressed together before move-out and in the far future, to scale between. */
function heights(stops: Stop[], left: string, height: number): (day: string) => number {
  const noon = (day: string) => new Date(`${day}T12:00:00Z`);
  const first = stops[0]!.day;
  const last = stops[stops.length - 1]!.day;
  const near = stops.filter((s) => daysBetween(left, s.day) <= nearDays).map((s) => s.day);
  const edge = near[near.length - 1] ?? left;
  const top = first < left ? height * 0.16 : 0;
  const foot = last > edge ? height * 0.84 : height;
  const points: [string, number][] = [
    [first, 0],
    [left, top],
    [edge, foot],
    [last, height],
  ];
  const kept = points.filter(([day], i) => i === 0 || day > points[i - 1]![0]);
  const scale = scaleTime(
    kept.map(([day]) => noon(day)),
    kept.map(([, y]) => y),
  );
  const inset = height * 0.03;
  return (day) => inset + (scale(noon(day)) * (height - 2 * inset)) / height;
}

const path = line();

export function timeline(d: Desk): TemplateResult | typeof nothing {
  const stops = stopsOf(d);
  const t = d.case.tenancy ?? {};
  const left = t['possessionReturned'] ?? t['ended'];
  if (!isDay(left) || stops.length < 4) return nothing;
  const height = stops.length * rowHeight;
  const y = heights(stops, left, height);
  const began = t['began'];
  const leader = (s: Stop, i: number) =>
    svg`<path class="timeline-leader" data-state=${s.state} vector-effect="non-scaling-stroke" d=${path([
      [22, y(s.day)],
      [60, (i + 0.5) * rowHeight],
      [100, (i + 0.5) * rowHeight],
    ])} />`;
  return html`<figure class="timeline">
    <figcaption class="unseen">${say('page.timeline.label')}</figcaption>
    <svg class="timeline-axis" viewBox="0 0 100 ${height}" preserveAspectRatio="none" aria-hidden="true" focusable="false">
      ${isDay(began) && began < left ? svg`<path class="timeline-stay" d="M10 ${y(began)}H34V${y(left)}H10Z" />` : nothing}
      <path class="timeline-after" d="M20 ${y(left)}H24V${y(stops[stops.length - 1]!.day)}H20Z" />
      ${stops.map(leader)}
    </svg>
    <ol>
      ${stops.map(
        (s) => html`<li data-state=${s.state} data-loud=${s.losesRightIfMissed ? 'yes' : nothing}>
          ${s.state === 'fact' || s.state === 'today' ? nothing : stateMark(s.state)}
          <span>${s.label} <span class="timeline-when">${s.when}</span>${
            s.state === 'fact' || s.state === 'today'
              ? nothing
              : html`<span class="unseen">, ${say(`page.timeline.state.${s.state}`)}</span>`
          }</span>
        </li>`,
      )}
    </ol>
  </figure>`;
}
