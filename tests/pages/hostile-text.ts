/** Words that hurt programs which trust them: markup, PDF operators, formulas, direction marks, signs beyond the first plane. */
export const hostileWords = {
  markup: '<img src=x onerror="window.struck=1"><script>window.struck=1</script><svg/onload=window.struck=1>',
  address: 'javascript:window.struck=1 data:text/html,<b>x</b> https://nowhere.invalid/"onmouseover="window.struck=1',
  pdf: ') Tj ET endstream endobj 1 0 obj << /OpenAction << /S /JavaScript /JS (app.alert(1)) >> >> stream (',
  formula: '=HYPERLINK("http://nowhere.invalid";"open") ',
  command: "@SUM(1+1)*cmd|' /C calc'!A0",
  minus: "-2+3+cmd|' /C calc'!A0",
  direction: 'plate \u202Egnp.exe\u202C and עברית and العربية end',
  signs: 'engine 🛠️ L17 \u{1F697} ﷽ Z\u0351\u036B\u0343 end',
  template: '$\u{7b}7*7} {{7*7}} %s %n $(id) `id` ../../etc/passwd \\x00',
} as const

const lastWords = ' These are its last words.'

/** A note of exactly 100,000 characters, the most a note may have; its last words can be looked for. */
export const longNote = 'Kept letter for letter. '.repeat(5000).slice(0, 100_000 - lastWords.length) + lastWords
