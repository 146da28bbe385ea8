/** The command line as a script sees it: exit codes, what is printed where, and what stands on disk afterwards. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { STARTER_KINDS } from '../../src/index.js';
import { BROKEN, GABLE, root, run, SHED, scratch } from './cli.testing.js';
import { main } from './main.js';

const temp = scratch();
let folders = 0;
const folder = (): string => {
  const path = join(temp, String(++folders));
  mkdirSync(path);
  return path;
};

const filesUnder = (dir: string): string[] =>
  readdirSync(dir, { recursive: true, withFileTypes: true })
    .filter((e) => e.isFile())
    .map((e) => join(e.parentPath, e.name).slice(dir.length + 1))
    .sort();

/** Paths of values that are no honest number: JSON writes NaN and the infinities as null. */
function nulls(value: unknown, path = ''): string[] {
  if (value === null || (typeof value === 'number' && !Number.isFinite(value))) return [path];
  if (typeof value !== 'object') return [];
  return Object.entries(value as object).flatMap(([k, v]) => nulls(v, `${path}/${k}`));
}

describe('exit codes', () => {
  it.each([GABLE, SHED])('says 0 for a project whose every mandatory check passes: %s', async (file) => {
    const r = await run('check', file);
    expect(r.code).toBe(0);
    expect(r.out).toMatch(/^ISSUABLE$/m);
    expect(r.out).not.toContain('PRELIMINARY');
  });

  it('says 1 for a sound project that is not issuable', async () => {
    const file = join(folder(), 'open.json');
    writeFileSync(file, readFileSync(GABLE, 'utf8').replace('(4) #5 vertical', '(4) #4 vertical'));
    const r = await run('check', file);
    expect(r.code).toBe(1);
    expect(r.out).toContain('PRELIMINARY – NOT FOR PERMIT');
    expect(r.out).not.toMatch(/^ISSUABLE/m);
  });

  it('says 2 for a file with errors, and gives every error its place', async () => {
    const r = await run('check', BROKEN);
    expect(r.code).toBe(2);
    const errors = r.out.split('\n').filter((l) => / error [a-z-]+ at \//.test(l));
    expect(errors.length).toBeGreaterThan(3);
    for (const line of errors) expect(line).toMatch(/project\.json:\d+:\d+ error/);
    expect((await run('why', BROKEN, 'B1')).code).toBe(2);
  });

  const refused: readonly [string, string[], RegExp][] = [
    ['an unknown option', ['check', GABLE, '--nope'], /unknown option '--nope'/],
    ['an unknown command', ['chek', GABLE], /unknown command 'chek'/],
    ['a missing argument', ['check'], /missing required argument 'file'/],
    ['a missing file', ['check', join(temp, 'none.json')], /none\.json: there is no such file/],
    ['a path through a file', ['check', join(GABLE, 'x.json')], /x\.json: there is no such file/],
    ['a folder as the file', ['check', temp], /this is a folder/],
    ['an unknown mark', ['why', GABLE, 'Z9'], /nothing is marked "Z9" here; the marks are .*B1/],
    ['an unknown sheet', ['draw', GABLE, '-o', join(temp, 'no-sheet'), '--only', 'S-999'], /no sheet S-999 .*S-101/],
    [
      'an unknown size',
      ['draw', GABLE, '-o', join(temp, 'no-size'), '--size', 'B5'],
      /"B5" is not a sheet size.*ARCH D/,
    ],
    ['an unknown starter', ['new', 'dome'], /"dome" is not a starter.*gable-attached/],
  ];
  it.each(refused)('says 2 for %s, with a plain message and no stack', async (_what, args, message) => {
    const r = await run(...args);
    expect(r.code).toBe(2);
    expect(r.err).toMatch(message);
    expect(r.err).not.toMatch(/^\s+at /m);
    expect(r.out).toBe('');
  });

  it('writes nothing for a request it refuses or a file with errors', async () => {
    expect(existsSync(join(temp, 'no-sheet'))).toBe(false);
    expect(existsSync(join(temp, 'no-size'))).toBe(false);
    const dir = join(temp, 'no-set');
    expect((await run('draw', BROKEN, '-o', dir)).code).toBe(2);
    expect(existsSync(dir)).toBe(false);
  });

  it('says 3, with the stack, for a fault of its own', async () => {
    const err: string[] = [];
    const out = (): never => {
      throw new Error('planted');
    };
    expect(await main(['check', GABLE], { out, err: (t) => void err.push(t), progress: () => {} })).toBe(3);
    expect(err.join('')).toMatch(/fault of its own[\s\S]*planted/);
  });
});

describe('help', () => {
  it.each([[['--help']], [['check', '--help']], [['draw', '--help']], [['new', '--help']], [['why', '--help']]])(
    'shows an example and exits 0: %s',
    async (args) => {
      const r = await run(...args);
      expect(r.code).toBe(0);
      expect(r.out).toMatch(/Examples?:\n\s+eavewright /);
      expect(r.err).toBe('');
    },
  );
});

describe('check --json', () => {
  it.each([GABLE, SHED, BROKEN])('prints one object of stable keys and finite numbers: %s', async (file) => {
    const r = await run('check', file, '--json');
    expect(r.code).toBe(file === BROKEN ? 2 : 0);
    const json = JSON.parse(r.out);
    expect(Object.keys(json).sort()).toEqual(['balance', 'issuable', 'issues', 'results', 'summary']);
    expect(json.issuable).toBe(file !== BROKEN);
    // `nearest` is null by intent when nothing passed.
    expect(nulls(json).filter((p) => p !== '/summary/nearest')).toEqual([]);
    if (file === BROKEN) {
      expect(json.issues.length).toBeGreaterThan(3);
      return;
    }
    expect(json.results.length).toBeGreaterThan(20);
    expect(json.summary.nearest.ratio).toBeGreaterThan(0);
    for (const result of json.results) {
      for (const key of ['id', 'check', 'subject', 'status', 'unit', 'combination', 'clause']) {
        expect(result, `${result.id} ${key}`).toHaveProperty(key, expect.any(String));
      }
      for (const key of ['demand', 'capacity', 'ratio']) {
        expect(result, `${result.id} ${key}`).toHaveProperty(key, expect.any(Number));
      }
    }
    expect(new Set(json.results.map((x: { id: string }) => x.id)).size).toBe(json.results.length);
  });
});

describe('new', () => {
  it.each(STARTER_KINDS)('%s writes a file that reads clean and fails no check', async (kind) => {
    const file = join(folder(), 'patio.json');
    expect(await run('new', kind, '-o', file)).toMatchObject({ code: 0, out: `${file}\n` });
    const r = await run('check', file, '--json');
    expect(r.code).toBe(1);
    const { results } = JSON.parse(r.out) as { results: { id: string; status: string }[] };
    expect(results.length).toBeGreaterThan(20);
    expect(results.filter((x) => x.status === 'fail').map((x) => x.id)).toEqual([]);
    expect((await run('new', kind)).out).toBe(readFileSync(file, 'utf8'));
  });

  it('keeps a file that stands there unless forced', async () => {
    const file = join(folder(), 'patio.json');
    writeFileSync(file, 'mine');
    const r = await run('new', 'shed-free', '-o', file);
    expect(r.code).toBe(2);
    expect(r.err).toContain('--force');
    expect(readFileSync(file, 'utf8')).toBe('mine');
    expect((await run('new', 'shed-free', '-o', file, '--force')).code).toBe(0);
    expect(readFileSync(file, 'utf8')).toContain('"cover"');
  });
});

describe('draw', () => {
  it('writes only the sheet asked for, and a set of one page', async () => {
    const dir = folder();
    const r = await run('draw', GABLE, '-o', dir, '--only', 's-101', '--json');
    expect(r.code).toBe(0);
    expect(filesUnder(dir)).toEqual(['set.pdf', 'sheets/S-101.svg']);
    expect(JSON.parse(r.out)).toEqual({
      files: [join(dir, 'sheets/S-101.svg'), join(dir, 'set.pdf')],
      issuable: true,
      findings: [],
    });
    const pdf = readFileSync(join(dir, 'set.pdf'), 'latin1');
    expect(pdf.startsWith('%PDF-')).toBe(true);
    expect(pdf.match(/\/Type \/Page\b(?!s)/g)).toHaveLength(1);
    expect(readFileSync(join(dir, 'sheets/S-101.svg'), 'utf8')).toMatch(/<svg [\s\S]*<\/svg>\s*$/);
  });
});

describe('draw in separate files', () => {
  const pages = (file: string): string[] =>
    JSON.parse(
      spawnSync('qpdf', ['--json', '--json-key=pagelabels', file], { encoding: 'utf8' }).stdout,
    ).pagelabels.map((l: { label: Record<string, unknown> }) => String(l.label['/P']).replace(/^u:/, ''));

  it('puts every sheet in exactly one of them, and in a file of its own', async () => {
    const dir = folder();
    const r = await run('draw', GABLE, '-o', dir, '--separate', '--each', '--black', '--json');
    expect(r.code).toBe(0);
    const ids = readdirSync(join(dir, 'sheets')).map((f) => f.slice(0, -4));
    const made = Object.fromEntries(
      readdirSync(join(dir, 'separate')).map((f) => [f.slice(0, -4), pages(join(dir, 'separate', f))]),
    );
    expect(Object.keys(made).sort()).toEqual(['calculations', 'drawings', 'site-plan', 'trusses']);
    expect(Object.values(made).flat().sort()).toEqual([...ids].sort());
    expect(made['site-plan']!.every((id) => id.startsWith('C-'))).toBe(true);
    expect(made.calculations!.every((id) => /^S-7/.test(id))).toBe(true);
    expect(readdirSync(join(dir, 'pages')).sort()).toEqual(ids.map((id) => `${id}.pdf`).sort());
    expect(pages(join(dir, 'pages', 'S-101.pdf'))).toEqual(['S-101']);
    expect(JSON.parse(r.out).findings).toEqual([]);
  });
});

describe('association and review', () => {
  it('writes the packet as one file', async () => {
    const dir = folder();
    const r = await run('association', GABLE, '-o', dir, '--json');
    expect(r.code).toBe(0);
    expect(filesUnder(dir)).toEqual(['association.pdf']);
    expect(JSON.parse(r.out).files).toEqual([join(dir, 'association.pdf')]);
    expect((await run('association', BROKEN, '-o', join(dir, 'no'))).code).toBe(2);
    expect(existsSync(join(dir, 'no'))).toBe(false);
  });

  it('lists every row an office asks for, and refuses to take out one that is not there', async () => {
    const r = await run('review', GABLE, '--json');
    const { rows, findings } = JSON.parse(r.out);
    expect(findings).toEqual([]);
    expect(rows.length).toBeGreaterThan(60);
    expect(r.code).toBe(rows.some((x: { found: { state: string } }) => x.found.state === 'missing') ? 1 : 0);
    const file = join(folder(), 'own.json');
    const own = '"submittal": { "officeChecklist": { "remove": ["lot-treez"] } }';
    writeFileSync(file, readFileSync(GABLE, 'utf8').replace(/\}\s*$/, `, ${own} }`));
    const bad = await run('review', file);
    expect(bad.code).toBe(2);
    expect(bad.err).toContain('no row is named "lot-treez"');
  });
});

describe('compare', () => {
  const dir = folder();
  const changed = join(dir, 'new.json');
  const letter = join(dir, 'comments.json');
  writeFileSync(
    changed,
    readFileSync(GABLE, 'utf8').replace('"mark": "P2", "at": "13 ft 6 in"', '"mark": "P2", "at": "13 ft"'),
  );
  writeFileSync(
    letter,
    `[{ "number": "1", "text": "P2 is over the drain.", "answer": "Moved.", "sheet": "S-101", "place": "F2" },
      { "number": "2", "text": "Show the uplift.", "answer": "Shown.", "sheet": "S-999" },
      { "number": "3", "text": "And the ledger?", "answer": "Shown." }]`,
  );

  it('prints what changed and writes the clouded sheets', async () => {
    const out = join(dir, 'plain');
    const r = await run('compare', GABLE, changed, '-o', out);
    expect(r.code).toBe(0);
    expect(r.out).toContain('/cover/beams/0/posts/1/at: 13 ft 6 in → 13 ft');
    expect(r.out).toMatch(/^ {2}F2 moved$/m);
    expect(r.out).toMatch(/S-101 Footing plan: changed \(.*F2/);
    expect(r.out).toContain("Revision 1 is not in the new file's log.revisions");
    expect(filesUnder(out)).toEqual(['revised.pdf']);
  });

  it('writes the answer letter, and reports each comment whose answer names no sheet of the set', async () => {
    const out = join(dir, 'letter');
    const r = await run('compare', GABLE, changed, '-o', out, '--comments', letter, '--json');
    expect(r.code).toBe(1);
    expect(filesUnder(out)).toEqual(['answers.md', 'answers.pdf', 'revised.pdf']);
    const { answers } = JSON.parse(r.out);
    expect(answers.map((a: { open: string }) => a.open)).toEqual(['', 'S-999 is not in the set', 'names no sheet']);
    expect(readFileSync(join(out, 'answers.md'), 'utf8')).toContain('Where: S-101 Footing plan: F2');
    const text = spawnSync('pdftotext', ['-layout', join(out, 'answers.pdf'), '-'], { encoding: 'utf8' }).stdout;
    expect(text).toContain('P2 is over the drain.');
    expect(text).toMatch(/STILL OPEN/);
  });

  it('says what is wrong with a file of comments, and finds nothing between a file and itself', async () => {
    const bad = join(dir, 'bad.json');
    writeFileSync(bad, '[{ "number": "1" }]');
    const r = await run('compare', GABLE, changed, '--comments', bad);
    expect(r.code).toBe(2);
    expect(r.err).toContain('the comments cannot be read');
    const same = await run('compare', GABLE, GABLE);
    expect([same.code, same.out]).toEqual([0, 'Nothing was changed.\n']);
  });
});

describe('draw --dxf', () => {
  const ends = (file: string): [string, string] => {
    const text = readFileSync(file, 'utf8');
    return [text.slice(0, 22), text.slice(-10)];
  };

  it('writes a whole file for each sheet and one with the plans together', async () => {
    const dir = folder();
    const r = await run('draw', SHED, '-o', dir, '--dxf', '--json');
    expect(r.code).toBe(0);
    const files = filesUnder(dir);
    const sheets = files.filter((f) => f.startsWith('sheets/')).map((f) => f.slice(7, -4));
    const drawn = files.filter((f) => f.startsWith('dxf/')).map((f) => f.slice(4, -4));
    expect(sheets.length).toBeGreaterThan(8);
    expect(drawn.sort()).toEqual([...sheets, 'model-plan'].sort());
    for (const f of drawn) {
      expect(ends(join(dir, 'dxf', `${f}.dxf`))).toEqual(['  0\r\nSECTION\r\n  2\r\nHEA', '  0\r\nEOF\r\n']);
    }
    expect((JSON.parse(r.out) as { files: string[] }).files.map((f) => f.slice(dir.length + 1)).sort()).toEqual(files);
  });

  it('keeps to the sheets asked for', async () => {
    const dir = folder();
    expect((await run('draw', GABLE, '-o', dir, '--dxf', '--only', 'S-101,C-101')).code).toBe(0);
    expect(filesUnder(dir).filter((f) => f.startsWith('dxf/'))).toEqual(['dxf/C-101.dxf', 'dxf/S-101.dxf']);
  });

  it('leaves no half file where one cannot be written', async () => {
    const dir = folder();
    mkdirSync(join(dir, 'dxf', 'S-101.dxf'), { recursive: true });
    const r = await run('draw', GABLE, '-o', dir, '--dxf', '--only', 'S-101');
    expect(r.code).toBe(2);
    expect(r.err).toMatch(/S-101\.dxf: cannot be written \(.+\)/);
    expect(filesUnder(dir).filter((f) => f.includes('.part-') || f.endsWith('.dxf'))).toEqual([]);
  });
});

describe('why', () => {
  it('prints the steps behind a beam, each with its clause', async () => {
    const r = await run('why', GABLE, 'B1');
    expect(r.code).toBe(0);
    expect(r.out).toMatch(/^beam B1$/m);
    const lines = r.out.split('\n');
    const steps = lines.filter((l) => /^ {6}\S+.* = /.test(l));
    expect(steps.length).toBeGreaterThan(20);
    for (const step of steps) expect(lines[lines.indexOf(step) + 1], step).toMatch(/^ {8}.+ \[.+\]$/);
    expect(r.out).toMatch(/\[NDS 2018 3\.3/);
    expect(r.out).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('prints the same as JSON', async () => {
    const json = JSON.parse((await run('why', GABLE, 'B1', '--json')).out);
    expect(json.mark).toBe('B1');
    expect(json.results.length).toBeGreaterThan(2);
    expect(nulls(json)).toEqual([]);
  });
});

describe('path', () => {
  it('prints the chain through a beam to the soil, three ways at every link', async () => {
    const r = await run('path', GABLE, 'B1');
    expect(r.code).toBe(0);
    const order = ['roof surface', 'truss', '> B1 beam', 'P1 post', 'F1 footing', '\n  soil'].map((t) =>
      r.out.indexOf(t),
    );
    expect(order.every((i) => i > 0)).toBe(true);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
    const links = r.out.split('\n').filter((l) => l.includes('↓'));
    for (const way of ['down', 'up', 'sideways']) {
      expect(r.out.split('\n').filter((l) => l.startsWith(`        ${way} `))).toHaveLength(links.length);
    }
    expect(r.out).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('prints the same as JSON, and refuses an unknown mark', async () => {
    const json = JSON.parse((await run('path', GABLE, 'J3', '--json')).out);
    expect(json.ends).toEqual(['soil']);
    expect(nulls(json)).toEqual([]);
    expect((await run('path', GABLE, 'Z9')).code).toBe(2);
  });
});

describe('a write that fails', () => {
  /** Each makes a folder in which the write must fail, and names the arguments. Root may write anywhere, so modes are no obstacle. */
  const obstacles: readonly [string, (dir: string) => string[]][] = [
    [
      'the output folder is a file',
      (dir) => {
        writeFileSync(join(dir, 'out'), 'mine');
        return ['draw', GABLE, '-o', join(dir, 'out'), '--only', 'S-101'];
      },
    ],
    [
      'a folder stands where the set goes',
      (dir) => {
        mkdirSync(join(dir, 'set.pdf'));
        return ['draw', GABLE, '-o', dir, '--only', 'S-101'];
      },
    ],
    [
      'the new file would stand in a file',
      (dir) => {
        writeFileSync(join(dir, 'out'), 'mine');
        return ['new', 'shed-free', '-o', join(dir, 'out', 'a', 'patio.json')];
      },
    ],
    ['the name is too long', (dir) => ['new', 'shed-free', '-o', join(dir, 'n'.repeat(300))]],
  ];
  it.each(obstacles)('gives a message and leaves no half file: %s', async (_what, prepare) => {
    const dir = folder();
    const r = await run(...prepare(dir));
    expect(r.code).toBe(2);
    expect(r.err).toMatch(/cannot be written \(.+\)/);
    expect(r.err).not.toMatch(/^\s+at /m);
    expect(filesUnder(dir).filter((f) => f.includes('.part-'))).toEqual([]);
    if (existsSync(join(dir, 'out'))) expect(readFileSync(join(dir, 'out'), 'utf8')).toBe('mine');
  });

  it.runIf(existsSync('/proc/self'))('ends where the system lets no folder be made', { timeout: 10_000 }, async () => {
    const r = await run('new', 'shed-free', '-o', '/proc/eavewright/a/patio.json');
    expect(r.code).toBe(2);
    expect(r.err).toContain('cannot be written');
  });
});

describe('the built program', () => {
  const bin = join(root, 'bin/eavewright.js');
  const built = (args: string[], input: string) => {
    expect(existsSync(join(root, 'dist/apps/cli/main.js')), 'dist/ is missing: run `npm run build` first').toBe(true);
    return spawnSync(process.execPath, [bin, ...args], { input, encoding: 'utf8', timeout: 20_000 });
  };

  it('reads standard input for "-" and exits with the code', () => {
    const text = readFileSync(GABLE, 'utf8');
    const r = built(['check', '-', '--json'], text);
    expect(r.stderr).toBe('');
    expect(r.status).toBe(0);
    expect(JSON.parse(r.stdout).results.length).toBeGreaterThan(20);
    // What the shell's pipe gives rather than a socket.
    const piped = spawnSync('sh', ['-c', `cat "$1" | "$2" "$3" check -`, 'sh', GABLE, process.execPath, bin], {
      encoding: 'utf8',
    });
    expect(piped.status).toBe(0);
  });

  it('calls empty input bad input', () => {
    const r = built(['check', '-'], '');
    expect(r.status).toBe(2);
    expect(r.stdout).toMatch(/error/);
  });
});
