// Layouts of the first half of the pages: the ones the reading was shaped on. Each is an account as HTML for a page of 816 by 1056.
import { money } from './contents.mjs';

const paid = (a) => [['Security deposit', a.deposit], ['Total deductions', a.total], [a.rest < 0 ? 'Balance due from tenant' : 'Refund to tenant', Math.abs(a.rest)]];

/** Lines set by blanks, as a typewriter or a line printer sets them. */
function typed(lines, style) {
  return `<pre style="margin:70px 60px;font:19px/1.55 ${style}">${lines.join('\n')}</pre>`;
}
const row = (left, sum, width = 58) => left.padEnd(width - sum.length) + sum;

export const layouts = {
  typewriter: (a, face = "'GNUTypewriter'") =>
    typed([
      'STATEMENT OF SECURITY DEPOSIT', '', a.street, a.day, '',
      ...a.charges.map((c) => row(c.text, money(c.cents))),
      row('', '---------'), row('TOTAL CHARGES', money(a.total)),
    ], face),
  printer: (a) =>
    typed([
      'DEPOSIT DISPOSITION', `UNIT: ${a.street}`.toUpperCase(), `DATE: ${a.day}`.toUpperCase(), '',
      ...a.charges.map((c, i) => row(`${String(i + 1).padStart(2)}. ${c.text.toUpperCase()}`, `$${money(c.cents)}`)), '',
      ...paid(a).map(([name, cents]) => row(name.toUpperCase(), `$${money(cents)}`)),
    ], "'Liberation Mono'"),
  leaders: (a) => `<style>p{display:flex;margin:4px 0}p i{flex:1;overflow:hidden;white-space:nowrap;font-style:normal}</style>
    <div style="margin:80px 90px;font:18px 'Liberation Serif'"><h3>Itemized deductions from deposit</h3><p>${a.street}</p><p>${a.day}</p><br>
    ${[...a.charges.map((c) => [c.text, c.cents]), ...paid(a)].map(([t, c]) => `<p>${t} <i>${' .'.repeat(120)}</i> <span>$${money(c)}</span></p>`).join('')}</div>`,
  table: (a) => `<style>table{border-collapse:collapse;width:100%}td,th{border:1px solid #000;padding:5px 8px;text-align:left}td:last-child,th:last-child{text-align:right}</style>
    <div style="margin:70px;font:16px 'Liberation Sans'"><h2>Deposit account</h2><p>${a.street}<br>Date: ${a.day}</p>
    <table><tr><th>Room</th><th>Description</th><th>Amount</th></tr>${a.charges.map((c) => `<tr><td>${c.room}</td><td>${c.text}</td><td>${money(c.cents)}</td></tr>`).join('')}
    <tr><td></td><td><b>Total</b></td><td><b>${money(a.total)}</b></td></tr></table><p>Deposit held: $${money(a.deposit)}</p></div>`,
  wide: (a) => `<style>p{display:flex;justify-content:space-between;margin:7px 0}</style><div style="margin:80px 40px;font:17px 'DejaVu Sans'">
    <b>Charges at move out</b><br>${a.street}<br><br>${a.charges.map((c) => `<p>${c.text}<span>${money(c.cents)}</span></p>`).join('')}<p><b>Total</b><b>${money(a.total)}</b></p></div>`,
  small: (a) => `<style>p{display:flex;margin:1px 0;width:430px;justify-content:space-between}</style><div style="margin:60px 80px;font:10.5px/1.25 'Liberation Serif'">
    Security deposit itemization for ${a.street}, as of ${a.day}. The following amounts have been withheld from the deposit that was held for the home.<br><br>
    ${a.charges.map((c) => `<p>${c.text}<span>$${money(c.cents)}</span></p>`).join('')}<p>Total withheld<span>$${money(a.total)}</span></p><p>Deposit<span>$${money(a.deposit)}</span></p></div>`,
  minus: (a) => `<style>td{padding:4px 12px}td+td{text-align:right}</style><div style="margin:70px;font:18px 'Courier Prime'"><p>FINAL ACCOUNT<br>${a.street}<br>${a.day}</p><table>
    ${a.charges.map((c) => `<tr><td>${c.text}${c.cents < 0 ? ' credit' : ''}</td><td>${money(c.cents)}${c.cents < 0 ? '-' : '&nbsp;'}</td></tr>`).join('')}
    <tr><td>Total charges</td><td style="border-top:2px solid">${money(a.total)}&nbsp;</td></tr></table></div>`,
  columns: (a) => {
    const half = Math.ceil(a.charges.length / 2);
    const list = (some) => `<table>${some.map((c) => `<tr><td>${c.text}</td><td style="text-align:right;padding-left:14px">${money(c.cents)}</td></tr>`).join('')}</table>`;
    return `<div style="margin:70px 45px;font:16px/1.5 'Liberation Sans'"><h3>Move out charges, ${a.street}</h3><div style="display:flex;gap:60px">${list(a.charges.slice(0, half))}${list(a.charges.slice(half))}</div>
      <p>Total of all charges: $${money(a.total)}</p></div>`;
  },
  letter: (a) => `<div style="margin:80px;font:17px/1.4 'Liberation Serif'"><p>${a.day}</p><p>Re: ${a.street}</p><p>After inspection of the home the following amounts are kept from your deposit of $${money(a.deposit)}:</p>
    <ul>${a.charges.map((c) => `<li>${c.text} - $${money(c.cents)}</li>`).join('')}</ul><p>The total of the deductions is $${money(a.total)}. ${a.rest < 0 ? `Please pay the balance due of $${money(-a.rest)}` : `A check for the refund of $${money(a.rest)} is enclosed`}.</p></div>`,
  counted: (a) => `<style>td,th{padding:4px 14px;text-align:right}td:first-child{text-align:left}th{border-bottom:1px solid}</style><div style="margin:70px;font:16px 'Liberation Sans'"><h3>Charges</h3><p>${a.street}, ${a.day}</p>
    <table><tr><th>Item</th><th>Qty</th><th>Price</th><th>Amount</th></tr>${a.charges.map((c) => `<tr><td>${c.text}</td><td>${c.count}</td><td>${money(c.rate)}</td><td>${money(c.cents)}</td></tr>`).join('')}
    <tr><td>Total</td><td></td><td></td><td>${money(a.total)}</td></tr></table></div>`,
  list: (a) => `<div style="margin:80px;font:20px/1.6 'Liberation Serif'">Charges against the deposit for ${a.street}<br><br><table>${a.charges.map((c) => `<tr><td>${c.text}</td><td style="padding-left:120px">$${money(c.cents)}</td></tr>`).join('')}</table></div>`,
};
