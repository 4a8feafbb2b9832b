// Layouts of the second half of the pages, which the reading was not shaped on.
import { money } from './contents.mjs';

const back = (a) => (a.rest < 0 ? ['Amount still owed', -a.rest] : ['Amount returned', a.rest]);

export const layouts = {
  underlined: (a) => `<pre style="margin:90px 70px;font:20px/1.5 'Courier Prime'">${[
    'Itemization of Deductions', `Premises: ${a.street}`, `Date: ${a.day}`, '',
    ...a.charges.map((c) => `${c.text.padEnd(36)}$ ${money(c.cents).padStart(9)}`), ''.padEnd(38) + '=========', `${'Total'.padEnd(36)}$ ${money(a.total).padStart(9)}`,
  ].join('\n')}</pre>`,
  wideType: (a) => `<pre style="margin:60px 30px;font:18px/1.7 'GNUTypewriter'">${[
    'ACCOUNT OF DEPOSIT', a.street, '', `Deposit${money(a.deposit).padStart(54)}`, 'Less:', ...a.charges.map((c) => `  ${c.text}`.padEnd(52) + money(c.cents).padStart(9)),
    `${back(a)[0]}`.padEnd(52) + money(back(a)[1]).padStart(9),
  ].join('\n')}</pre>`,
  first: (a) => `<style>td{padding:3px 16px 3px 0}td:first-child{text-align:right}</style><div style="margin:90px;font:18px 'Liberation Serif'"><b>Amounts withheld</b><p>${a.street}, ${a.day}</p><table>
    ${a.charges.map((c) => `<tr><td>$${money(c.cents)}</td><td>${c.text}</td></tr>`).join('')}<tr><td><b>$${money(a.total)}</b></td><td><b>Total withheld</b></td></tr></table></div>`,
  shaded: (a) => `<style>table{border-collapse:collapse;width:620px}td,th{padding:6px 10px;text-align:left}td+td,th+th{text-align:right}tr:nth-child(even){background:#ddd}th{background:#444;color:#fff}</style>
    <div style="margin:60px 90px;font:15px 'DejaVu Sans'"><h3>Security deposit summary</h3>${a.street}<br>Prepared ${a.day}<br><br><table><tr><th>Deduction</th><th>Cost</th></tr>
    ${a.charges.map((c) => `<tr><td>${c.text}</td><td>$${money(c.cents)}</td></tr>`).join('')}<tr><td>Total deductions</td><td>$${money(a.total)}</td></tr><tr><td>Deposit paid</td><td>$${money(a.deposit)}</td></tr><tr><td>${back(a)[0]}</td><td>$${money(back(a)[1])}</td></tr></table></div>`,
  rooms: (a) => {
    const names = [...new Set(a.charges.map((c) => c.room))];
    const sorted = names.flatMap((n) => a.charges.filter((c) => c.room === n));
    a.charges.splice(0, a.charges.length, ...sorted);
    return `<style>p{display:flex;justify-content:space-between;margin:3px 0 3px 20px}</style><div style="margin:60px 110px;font:16px 'Liberation Sans'"><h3>Move-out report</h3>${a.street}<br>${a.day}
      ${names.map((n) => `<h4 style="margin:10px 0 2px">${n}</h4>${sorted.filter((c) => c.room === n).map((c) => `<p>${c.text}<span>${money(c.cents)}</span></p>`).join('')}`).join('')}<hr><p><b>Total charges</b><b>${money(a.total)}</b></p></div>`;
  },
  slip: (a) => `<style>p{display:flex;justify-content:space-between;margin:2px 0}</style><div style="margin:40px 250px;width:330px;font:16px 'DejaVu Sans Mono'">DEPOSIT RECEIPT<br>${a.street}<br>${a.day}<br><br>
    ${a.charges.map((c) => `<p>${c.text.slice(0, 20)}<span>${money(c.cents)}</span></p>`).join('')}<p>--<span>--------</span></p><p>TOTAL<span>${money(a.total)}</span></p></div>`,
  sideBySide: (a) => {
    const half = Math.ceil(a.charges.length / 2);
    const box = (some) => `<div style="border:2px solid;padding:8px 12px;flex:1">${some.map((c) => `<p>${c.text}<span>$${money(c.cents)}</span></p>`).join('')}</div>`;
    return `<style>p{display:flex;justify-content:space-between;margin:5px 0}</style><div style="margin:60px 40px;font:15px 'Liberation Sans'"><h3>Charges to ${a.street}</h3><div style="display:flex;gap:30px">${box(a.charges.slice(0, half))}${box(a.charges.slice(half))}</div><p>Sum of both lists<span>$${money(a.total)}</span></p></div>`;
  },
  spanish: (a) => {
    const words = ['Limpieza de alfombra', 'Pintura de pared', 'Llaves perdidas', 'Cambio de persianas', 'Limpieza general', 'Basura', 'Puerta rota', 'Agua sin pagar'];
    a.charges.forEach((c, i) => (c.text = words[i % words.length]));
    return `<style>p{display:flex;justify-content:space-between;margin:6px 0}</style><div style="margin:80px 100px;font:17px 'Liberation Serif'"><b>Deducciones del depósito</b><br>${a.street}<br><br>
    ${a.charges.map((c) => `<p>${c.text}<span>$${money(c.cents)}</span></p>`).join('')}<p><b>Total</b><b>$${money(a.total)}</b></p></div>`;
  },
  fine: (a) => `<style>td{padding:1px 6px;border:1px solid #999}td+td{text-align:right}</style><div style="margin:60px;font:11px 'DejaVu Sans'">${a.street} ${a.day}<br><br><table style="border-collapse:collapse"><tr><td>Work done</td><td>Charge</td></tr>
    ${a.charges.map((c) => `<tr><td>${c.text}</td><td>${money(c.cents)}</td></tr>`).join('')}<tr><td>Grand total</td><td>${money(a.total)}</td></tr></table></div>`,
  dots: (a) => `<pre style="margin:90px 60px;font:19px/1.5 'Liberation Mono'">${['DEDUCTIONS', a.street, a.day, '', ...a.charges.map((c) => c.text.padEnd(44, '.') + money(c.cents).padStart(10, '.'))].join('\n')}</pre>`,
  credits: (a) => `<style>td{padding:4px 20px 4px 0}td+td{text-align:right}</style><div style="margin:80px;font:18px 'Liberation Sans'"><h3>Ledger at move out</h3>${a.street}<table>${a.charges.map((c) => `<tr><td>${c.cents < 0 ? 'Credit: ' : ''}${c.text}</td><td>${c.cents < 0 ? `(${money(c.cents)})` : money(c.cents)}</td></tr>`).join('')}<tr><td>Total charges</td><td>${money(a.total)}</td></tr></table></div>`,
};
