/**
 * What is said before the cuts, and which piece and methods ask for what. Every fact of the trade in here is common
 * practice: no published figure stands behind 150 mm, 300 mm or any of the rules.
 */
import { describe, expect, it } from 'vitest';
import type { Method, Project } from '../../../sim/project/document';
import { exampleProject, mirrorFrameProject, planterProject } from '../../../sim/project/example';
import { applyPreset } from '../../../sim/project/presets';
import {
  CAUTIONS_COMMAND_LINE,
  cautionGroups,
  cautionsFor,
  FIRST_CAUTION,
  shortHoldWarning,
} from '../../../sim/wording/cautions';

/** Every way of cutting changed alike. */
function withMethods(project: Project, change: (method: Method) => Method): Project {
  return { ...project, methods: project.methods.map(change) };
}

/** Four upright sides with parallel edges and the wide face down, ripped by the fence. */
function bin(): Project {
  const project = planterProject();
  const piece = { ...project.piece, sides: 4, slopeDeg: 0, grain: 'upStave', heightMm: 300 } as const;
  return withMethods({ ...project, piece }, (method) => ({
    ...applyPreset(method, 'guide', 'ripFence'),
    sequence: 'flipFace',
  }));
}

/** The same with a splay, so that its staves taper. */
function column(): Project {
  const project = bin();
  return { ...project, piece: { ...project.piece, sides: 8, slopeDeg: 3 } };
}

const onMitreSaw = (method: Method): Method => applyPreset(method, 'blade', 'largeMitreSaw');
const untested = (method: Method): Method => ({ ...method, test: { ...method.test, kind: 'none', maxRounds: 0 } });

const PIECES = { lantern: exampleProject, planter: planterProject, bin, column, frame: mirrorFrameProject };
type PieceName = keyof typeof PIECES;

describe('the usual cautions', () => {
  it.each(Object.keys(PIECES) as PieceName[])('of the %s begin with what goes first', (name) => {
    expect(cautionsFor(PIECES[name]())[0]).toBe(
      'Usual cautions; your machine’s manual, local rules and trained practice go first.',
    );
  });

  // What model and trade ask for whatever is cut: common practice.
  it.each([
    ['eyes, ears and lungs', /eyes, ears and lungs/],
    ['gloves, sleeves and hair', /No gloves, no loose sleeves.*hair/],
    ['unplugging for a change of blade', /Unplug the saw before you change the blade/],
    ['guard and riving knife', /guard and riving knife in place/],
    ['a blade that stands still', /blade stands still and the power is isolated before gauge, hand or test ring/],
    ['the height of the blade', /height of the blade before you start/],
    ['what is held', /wide enough to hold|long enough to hold/],
    ['free-hand cuts', /Never cut free-hand/],
    ['hands off', /hands at least 150 mm from the blade/],
    ['what is trapped', /nothing may be trapped between .*fence and blade/i],
    ['wedges', /Clear wedges and offcuts only when the blade has stopped/],
    ['mouths', /away from the saw/],
    ['filled joints', /filled is weaker/],
    ['strength', /rates the strength/],
  ])('speak of %s for every piece', (_, pattern) => {
    for (const make of Object.values(PIECES)) expect(cautionsFor(make()).join('\n')).toMatch(pattern);
  });

  it.each<[string, RegExp, PieceName[]]>([
    ['the tilted blade', /trapped under the tilted blade/, ['lantern', 'planter', 'bin', 'column']],
    ['turning it by hand', /turn the tilted blade by hand/, ['lantern', 'planter', 'bin', 'column']],
    ['tilting away from the fence', /tilted away from the fence/, ['bin', 'column']],
    ['the last of a rip', /push sticks for the last 300 mm/, ['bin', 'column']],
    ['a board thrown back', /thrown back/, ['bin', 'column']],
    ['a jig for tapers', /jig that clamps/, ['column']],
    // Narrow end of a stave, by hand: lantern 75.0 mm, planter 126.2 mm, frame 165.7 mm.
    ['a clamp or hold-down', /clamp or a hold-down, and have push sticks/, ['lantern', 'planter']],
    ['a stop', /stop stands on the side of the blade where the stave comes off/, ['lantern', 'planter', 'frame']],
    ['before the cut only', /touches the stop before the cut only/, ['lantern', 'planter', 'frame']],
    ['a sled', /sled so that the riving knife stays on/, ['lantern', 'planter', 'frame']],
    ['the sled’s own guard', /give the sled a cover, and a block/, ['lantern', 'planter', 'frame']],
    ['test pieces from long strips', /test pieces from strips as long/, ['lantern', 'planter']],
    ['end grain', /end-grain mitre is weak/, ['lantern', 'planter', 'frame']],
    ['a mitre saw', /mitre saw/, []],
  ])('speak of %s only where piece and methods ask for it', (_, pattern, wanted) => {
    const saying = (Object.keys(PIECES) as PieceName[]).filter((name) =>
      pattern.test(
        cautionsFor(name === 'bin' || name === 'column' ? withMethods(PIECES[name](), untested) : PIECES[name]()).join(
          '\n',
        ),
      ),
    );
    expect(saying).toEqual(wanted);
  });

  it('look at the methods asked for alone', () => {
    const project = exampleProject();
    const [line, stop, tested] = project.methods.map((method) => cautionsFor(project, [method]).join('\n'));
    // The marked line is guided by a gauge with a fence, cut with the wide face up.
    expect(line).not.toMatch(/sled so that|The stop stands|comes off under the blade/);
    expect(line).toContain('Slide the rip fence well away from the blade.');
    expect(stop).toMatch(/sled so that/);
    expect(stop).not.toContain('Slide the rip fence');
    expect([stop, tested].map((said) => /Cut test pieces/.test(said!))).toEqual([false, true]);
  });

  // By the geometry of a cut: a face that reaches further at the table lies under the lean of the blade.
  it('know on which side of a tilted blade the stave comes off', () => {
    const project = exampleProject();
    const stop = project.methods[1]!;
    const up = cautionsFor(project, [{ ...stop, wideFace: 'up' }]).join('\n');
    const down = cautionsFor(project, [{ ...stop, wideFace: 'down' }]).join('\n');
    expect(up).toContain('where the stave comes off, the side it leans away from.');
    expect(up).not.toContain('comes off under the blade');
    expect(down).toContain('where the stave comes off.');
    expect(down).toContain('comes off under the blade: leave it room');
    expect(cautionsFor(mirrorFrameProject()).join('\n')).not.toMatch(/leans away|under the blade|tilted/);
  });

  it('speak of a mitre saw where a method chooses one, and of the table saw no more where all do', () => {
    const project = exampleProject();
    const one = cautionsFor(project, [onMitreSaw(project.methods[0]!), project.methods[1]!]).join('\n');
    expect(one).toContain('never tie it back');
    expect(one).toContain('riving knife');
    const all = cautionsFor(withMethods(project, onMitreSaw)).join('\n');
    expect(all).toContain('On a mitre saw, clamp the strip to the fence');
    expect(all).not.toMatch(/riving knife|sled so|height of the blade|Slide the rip fence/);
    const rip = cautionsFor(withMethods(bin(), onMitreSaw)).join('\n');
    expect(rip).toContain('Never rip on a mitre saw: use a table saw.');
    expect(rip).toMatch(/riving knife/);
  });

  it('take a sled for possible where the figures are one’s own', () => {
    const project = exampleProject();
    const line = project.methods[0]!;
    const own = { ...line, guide: { zeroDeg: 0.07, settingDeg: 0.07, slotDeg: 0.07, seatMm: 0.07, faceMm: 77 } };
    expect(cautionsFor(project, [own]).join('\n')).toContain('Make a sled so that');
  });

  it('stand in the order of the work', () => {
    expect(cautionGroups(exampleProject()).map(({ title }) => title)).toEqual([
      'You and the machine',
      'Setting the saw',
      'At the cut',
      'After the cut',
      'The joint',
    ]);
  });

  it('name the hold length in the units at hand', () => {
    const project = exampleProject();
    expect(cautionsFor(project).join(' ')).toContain('200 mm is left in hand');
    const inch = cautionsFor({ ...project, display: 'inch' }).join(' ');
    expect(inch).toContain('7 7/8 in is left in hand');
    expect(inch).toContain('hands at least 6 in from the blade');
    expect(cautionsFor({ ...bin(), display: 'inch' }).join(' ')).toContain('the last 12 in');
  });

  it('can be read aloud: plain sentences of at most twenty words, none twice', () => {
    const makes = Object.values(PIECES).flatMap((make) => [make(), withMethods(make(), onMitreSaw)]);
    for (const project of makes) {
      const short = shortHoldWarning({ ...project, stock: { ...project.stock, holdMm: 60 } });
      const said = [...cautionsFor(project), CAUTIONS_COMMAND_LINE, short ?? ''];
      for (const text of said) {
        expect(text).toMatch(/^[A-Z].*\.$/);
        for (const sentence of text.split(/(?<=\.) /)) expect(sentence.split(' ').length).toBeLessThanOrEqual(20);
      }
      expect(new Set(said).size).toBe(said.length);
    }
  });
});

describe('a short hold length', () => {
  const held = (holdMm: number, project = exampleProject()): Project => {
    return { ...project, stock: { ...project.stock, holdMm } };
  };

  it('is warned of below 150 mm, with the reason, before everything else', () => {
    expect(shortHoldWarning(held(150))).toBeNull();
    const warning = shortHoldWarning(held(149));
    expect(warning).toBe(
      'Danger: only 149 mm is left to hold at the last cut. ' +
        'A part so short cannot be held safely: fingers come too near the blade. Leave at least 150 mm.',
    );
    expect(cautionsFor(held(149)).slice(0, 2)).toEqual([warning, FIRST_CAUTION]);
  });

  it('is told in the units at hand, and of a board’s width where it is ripped', () => {
    expect(shortHoldWarning({ ...held(100), display: 'inch' })).toContain('only 3.937 in is left');
    expect(shortHoldWarning({ ...held(100), display: 'inch' })).toContain('at least 5.906 in');
    expect(shortHoldWarning(held(100, bin()))).toContain('A part so narrow');
  });
});
