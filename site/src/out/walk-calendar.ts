// The days before moving out as an iCalendar file (RFC 5545): the last day to ask for an inspection, the window it may be held in, and the
// leaving day. A window is an entry from its first day to its last; a day before which nothing may be done bears no alarm.

import ical, { ICalAlarmType, ICalEventTransparency } from 'ical-generator';
import type { Assessment } from '../case/assessment';
import type { CaseFile } from '../case/case';
import { leftOn } from '../case/next-step';
import { oneLine } from '../case/plain';
import { inspectionDays } from '../case/walk-days';
import { addDays } from '../say/near';
import { longDay } from '../say/show';
import { say } from '../say/wording';

const day = 86_400;

interface Entry {
  id: string;
  from: string;
  /** Its last day, where it is more than one. */
  to?: string;
  what: string;
  why: string;
  /** It is to be done by then: alarms a week and a day ahead. */
  due: boolean;
}

/** Days before the keys go back by which companies are told; common practice, no source. */
const servicesAhead = 7;

function entries(c: CaseFile, a: Assessment | null, today: string): Entry[] {
  const leaving = leftOn(c);
  const all: Entry[] = [];
  if (a) {
    const { askBy, from, to, rules } = inspectionDays(a, today, leaving);
    const why = [...new Set(rules.flatMap((r) => [r.rule, r.source ?? '']))].filter(Boolean).join('\n\n');
    if (askBy && askBy >= today)
      all.push({ id: 'ask-inspection', from: askBy, what: say('page.walk.calendar.ask'), why, due: true });
    if (from) {
      const end = to ?? leaving;
      const what =
        end && end > from ? say('page.walk.calendar.window', { to: longDay(end) }) : say('page.walk.calendar.from');
      all.push({ id: 'inspection', from, ...(end && end > from && { to: end }), what, why, due: false });
    } else if (to && to >= today) {
      all.push({ id: 'inspection-by', from: to, what: say('page.walk.calendar.held'), why, due: true });
    }
  }
  if (leaving) {
    const services = addDays(leaving, -servicesAhead);
    if (services >= today)
      all.push({ id: 'services', from: services, what: say('page.walk.calendar.services'), why: '', due: false });
    all.push({
      id: 'leaving',
      from: leaving,
      what: say('page.walk.calendar.leaving'),
      why: say('page.walk.photoList.says'),
      due: true,
    });
  }
  return all;
}

export function walkCalendar(c: CaseFile, a: Assessment | null, today: string, title: string): string {
  const about = oneLine(title);
  const file = ical({ name: about, prodId: { company: 'Wearline', product: 'Wearline', language: 'EN' } });
  for (const e of entries(c, a, today)) {
    const event = file.createEvent({
      id: `${e.id}-${e.from}@wearline`,
      stamp: new Date(`${today}T12:00:00Z`),
      start: new Date(`${e.from}T00:00:00`),
      // The end of an entry of whole days is the day after its last (RFC 5545, 3.6.1).
      ...(e.to && { end: new Date(`${addDays(e.to, 1)}T00:00:00`) }),
      allDay: true,
      transparency: ICalEventTransparency.TRANSPARENT,
      summary: `${e.what} (${about})`,
      description: e.why,
    });
    if (!e.due) continue;
    for (const before of [7 * day, day])
      event.createAlarm({ type: ICalAlarmType.display, trigger: before, description: e.what });
  }
  return file.toString();
}
