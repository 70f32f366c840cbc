/** What `--help` prints. */

const JSON_HELP = '  --json                one JSON object on standard output in place of tables';

const METHOD_HELP = '  --method NAME         only this method';

const RINGS_HELP = `  --seed S              seed of the random draws, 0 to 4294967295
  --rule touch|contact  how the ring closes: contact is the truth of the model, touch a quick preview
${METHOD_HELP}`;

const RUN_HELP = `  --trials N            rings to simulate for each method, 100 to 10000000; exact
${RINGS_HELP}
  --budget, --no-budget with or without the error budget (without, unless asked for)
  --timing              with --json: "elapsedMs", how long each method took; without it the same input gives the same
                        bytes`;

/** For questions that choose a number of rings by themselves. */
const questionHelp = (rings: string): string => `${JSON_HELP}
  --trials N            rings behind every figure, 100 to 10000000, in place of ${rings}
${RINGS_HELP}`;

export const HELP = {
  ringtrue: `ringtrue: how the joints of a ring of mitred staves will close, before the first cut.

  ringtrue predict FILE     what each method of the project leads to
  ringtrue compare FILE     the methods side by side, and which to use
  ringtrue budget FILE      where the gap comes from, source by source
  ringtrue test-cuts FILE   whether test cuts are worth it
  ringtrue aim FILE         the tilt to aim at for most good pieces
  ringtrue accuracy FILE    how good each source has to be for a share of good pieces
  ringtrue season FILE      what a change of moisture does to the joints
  ringtrue stock FILE       strips, cuts in their order, and the chance of a stave too few
  ringtrue report FILE      a sheet for the client, or all figures for the maker, as PDF or HTML
  ringtrue example          a worked project file to start from
  ringtrue check FILE       whether a project file can be used

FILE is a project, *.ringtrue.json; - reads standard input.
"ringtrue COMMAND --help" tells more. Exit code: 0 fine, 2 wrong file or options, 1 anything else.
`,
  predict: `ringtrue predict FILE [options]

What each method of the project leads to: gaps, mouth, clear opening, chance of success, cost.

${JSON_HELP}
${RUN_HELP}
  --touch-excess        with --json: how far too wide touch makes the widest gap, on 1000 rings closed by both rules (the
                        tables always say it); null for a method that touch has no say in
  --rings FILE.csv      besides, write every single ring of the one method, a line each, as a table for a spreadsheet
  --force               write over a file that is there already

Ctrl-C ends the run with the rings done so far: the figures are printed, their "stopReason" is "cancelled", and the exit
code is 1. A second Ctrl-C ends at once.
`,
  compare: `ringtrue compare FILE [options]

The methods side by side, how each differs from the one to use, which of two pieces is the tighter, and which method to
use.

${JSON_HELP}: the prediction's keys, then
                        "pairs" (first, second, firstAhead with its interval), "bestChances" (chance of the tightest
                        piece of all), "differences" (against the method to use: yield, show gap, cost, each with its
                        interval) and "recommendation" (headline, because)
${RUN_HELP}

Ctrl-C ends the run with the rings done so far, as in predict.
`,
  budget: `ringtrue budget FILE [options]

Where the gap of each method comes from: for every source its share of the variance, the gap that 95 of 100 pieces stay
under were it perfect, and what it brings alone and in all (first-order and total sensitivity index), with intervals.

${questionHelp('20000 (8000 for the indices)')}
`,
  'test-cuts': `ringtrue test-cuts FILE [options]

Whether test cuts are worth the wood and the time: good pieces, cost and extra cost of a job for every number of rounds.

${questionHelp('10000')}
`,
  aim: `ringtrue aim FILE [options]

Which deliberate offset of the tilt makes most pieces good: it trades gaps that show for gaps that are hidden.

${questionHelp('10000')}
`,
  accuracy: `ringtrue accuracy FILE --yield SHARE [options]

How good each source of error has to be for a wanted share of good pieces: one by one, and together with least effort.

  --yield SHARE         share of pieces wanted good, such as 0.95
${questionHelp('6000')}
`,
  season: `ringtrue season FILE [options]

What a change of moisture does to the angles and the joints, for the wood named in the file, in either way of sawing.

${JSON_HELP}
  --from-humidity P     relative humidity before, 0 to 95 % (35)
  --to-humidity P       relative humidity after (65)
  --temperature T       of the air, -1 to 130 °C (20)
  --points P            points of moisture content in place of the air, -30 to 30; below 0 the wood dries
`,
  stock: `ringtrue stock FILE [options]

The strips, every cut in its order with where its kerf falls, the chance of coming up a stave short, and the cautions.

${JSON_HELP};
                        strips, cuts and staves are counted from 1
${METHOD_HELP}
  --kerf-sigma MM       how far the kerf is off, the same in all cuts, 0 to 10 mm (0.1)
  --length-sigma MM     how far a strip's length is off, 0 to 1000 mm (3)
`,
  report: `ringtrue report FILE [options]

One page that explains the piece to a client, or the maker's report: piece, settings, figures and where they come from,
results with their intervals, error budget, test cuts, the cuts in their order with cautions.

  --for client|maker    whom it is for (client)
  --out FILE            a name ending in .pdf or .html; without it the HTML goes to standard output
  --paper a4|letter     paper (a4)
  --force               writes over a file that is there already
  --trials N            rings to simulate for each method, 100 to 10000000; exact
  --seed S              seed of the random draws, 0 to 4294967295
  --rule touch|contact  how the ring closes: contact is the truth of the model, touch a quick preview
  --method NAME         about this method, in place of the file's or the best one

A PDF is printed by an installed Chromium-family browser; the environment variable RINGTRUE_CHROMIUM can name one.
`,
  example: `ringtrue example [options]

A worked project file, invented for the purpose, on standard output or in a file.

  --which NAME          lantern (unless told otherwise), planter or mirror-frame
  --out FILE            writes this file; one that is there already is kept
  --force               writes it even so
`,
  check: `ringtrue check FILE

Whether the project can be used: what it holds and what is worth a second look, or a line for each problem.
`,
} as const;
