// The open legal days as an iCalendar file (RFC 5545), each with an alarm a week and a day ahead.

import ical, { ICalAlarmType, ICalEventTransparency } from 'ical-generator';
import type { Assessment, LegalDate } from '../case/assessment';
import { say } from '../say/wording';
import { oneLine } from '../case/plain';

const day = 86_400;

/** The days still ahead: open, with a last day not before today. */
export const ahead = (a: Assessment): LegalDate[] =>
  a.dates.filter((d) => d.state === 'open' && d.last?.earliest && d.last.earliest >= a.today);

/** `title` names the case in each entry. The earliest day it can be is the one to keep to. */
export const calendar = (a: Assessment, title: string): string => calendarOf([{ result: a, title }]);

/** The days of several cases in one file; it bears the name of the case where there is but one. */
export function calendarOf(cases: readonly { result: Assessment; title: string }[]): string {
  // Of the lines of the file, those of its name are written as they come: a name of two lines would write a line of its own.
  const name = oneLine(cases.length === 1 ? cases[0]!.title : say('page.report.title'));
  const file = ical({ name, prodId: { company: 'Wearline', product: 'Wearline', language: 'EN' } });
  cases.forEach(({ result: a, title }, number) => {
    const about = oneLine(title);
    for (const d of ahead(a)) {
      const start = new Date(`${d.last!.earliest}T00:00:00`);
      const event = file.createEvent({
        id: `${d.id}-${d.last!.earliest}-${a.jurisdiction ?? 'none'}${cases.length > 1 ? `-${number + 1}` : ''}@wearline`,
        stamp: new Date(`${a.today}T12:00:00Z`),
        start,
        allDay: true,
        transparency: ICalEventTransparency.TRANSPARENT,
        summary: `${d.label} (${about})`,
        description: [d.rule, d.text, d.ifMissed, d.source, ...a.cautions.slice(0, 2).map((c) => c.text)]
          .filter(Boolean)
          .join('\n\n'),
      });
      for (const before of [7 * day, day])
        event.createAlarm({
          type: ICalAlarmType.display,
          trigger: before,
          description: say('page.takeaway.alarm', { what: d.label }),
        });
    }
  });
  return file.toString();
}
