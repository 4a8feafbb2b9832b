// What the invented statements say: a home, a day, charges, and the sums that follow from them. Seeded: the same seed says the same.

/** Numbers from 0 to 1 (mulberry32). */
export function dice(seed) {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const streets = ['Sorrel Way', 'Quarry Lane', 'Heron Court', 'Mill Road', 'Alder Street', 'Copper Avenue', 'Larch Terrace', 'Basin Street'];

const words = [
  'Carpet cleaning', 'Replace two blinds', 'Paint bedroom walls', 'Patch drywall in hall', 'Oven cleaning', 'Refrigerator shelf', 'Haul away trash',
  'Kitchen faucet', 'Broken window pane', 'Smoke alarm battery', 'Door lock rekey', 'Lost keys', 'Toilet seat', 'Shower curtain rod', 'Light bulbs',
  'Screen door repair', 'Stove drip pans', 'Closet door off track', 'Mildew treatment, bath', 'Pet odor treatment', 'Counter top burn', 'Yard clean up',
  'Unpaid water bill', 'Late fee', 'Towel bar', 'Garbage disposal jam', 'Baseboard repair', 'Vinyl floor tear', 'Ceiling stain', 'Mailbox key',
  'General cleaning', 'Window washing', 'Cabinet hinge', 'Outlet covers', 'Hallway paint touch up', 'Bathtub reglaze', 'Gutter cleaning', 'Thermostat',
];

const rooms = ['Kitchen', 'Bedroom', 'Bathroom', 'Living room', 'Hall'];

/** Cents as statements round them: mostly whole dollars, some odd. */
function sumOf(roll) {
  const dollars = roll() < 0.2 ? 1 + Math.floor(roll() * 19) : roll() < 0.75 ? 20 + 5 * Math.floor(roll() * 56) : roll() < 0.85 ? 300 + 10 * Math.floor(roll() * 70) : 1000 + 5 * Math.floor(roll() * 180);
  const cents = roll() < 0.55 ? 0 : roll() < 0.5 ? 50 : Math.floor(roll() * 100);
  return dollars * 100 + cents;
}

const days = ['March 4, 2026', 'June 30, 2026', '08/14/2026', 'October 2, 2026', '9/18/2026', 'July 21, 2026'];

/**
 * `rows`: how many charges; `credits`: how many of them are in the tenant's favor; `counted`: each is a count times a price.
 * Sums in cents; what is paid back or still owed follows.
 */
export function account(seed, { rows = 6, credits = 0, counted = false } = {}) {
  const roll = dice(seed);
  const pick = (list) => list[Math.floor(roll() * list.length)];
  const left = [...words];
  const charges = Array.from({ length: rows }, (_, i) => {
    const text = left.splice(Math.floor(roll() * left.length), 1)[0];
    const room = pick(rooms);
    if (counted) {
      const count = 1 + Math.floor(roll() * 5);
      const rate = 500 + 25 * Math.floor(roll() * 200);
      return { text, room, count, rate, cents: count * rate };
    }
    return { text, room, cents: (i >= rows - credits ? -1 : 1) * sumOf(roll) };
  });
  const total = charges.reduce((sum, c) => sum + c.cents, 0);
  const deposit = 100 * (Math.ceil(total / 10000) * 100 + 50 * Math.floor(roll() * 12 - 3));
  return {
    street: `${10 + Math.floor(roll() * 900)} ${pick(streets)}, Unit ${1 + Math.floor(roll() * 30)}`,
    day: pick(days), charges, total, deposit: Math.max(deposit, 30000),
    get rest() { return this.deposit - this.total; },
  };
}

/** "1,240.00" */
export const money = (cents) => (Math.abs(cents) / 100).toFixed(2).replace(/\B(?=(\d{3})+\.)/g, ',');
