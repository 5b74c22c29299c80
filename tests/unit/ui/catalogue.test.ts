import { globSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { visibleEnglish } from '../../support/visible-english.ts';

const root = new URL('../../..', import.meta.url);

test('no component holds text of its own: another language is another catalogue', () => {
  const components = globSync('desktop/ui/**/*.tsx', { cwd: root.pathname });
  expect(components.length).toBeGreaterThan(40);
  const found = components.flatMap((path) => visibleEnglish(path, readFileSync(new URL(path, root), 'utf8')));
  expect(found).toEqual([]);
});

test.each([
  ['<p>Hello</p>', 'Hello'],
  ['<p>{n} days</p>', 'days'],
  ["<p>{'Hello'}</p>", 'Hello'],
  ['<p>{on ? `Hello` : name}</p>', 'Hello'],
  ["<p>{name ?? 'Hello'}</p>", 'Hello'],
  ["<p>{on && 'Hello'}</p>", 'Hello'],
  ["<p>{name + ' days'}</p>", 'days'],
  [`<p>{\`\${n} days\`}</p>`, 'days'],
  ['<p>{list.map((one) => <b>Hello</b>)}</p>', 'Hello'],
  ['<a title="Hello" />', 'Hello'],
  ["<a aria-label={on ? name : 'Hello'} />", 'Hello'],
  [`<a label={\`\${name}: Hello\`} />`, ': Hello'],
  ['<B icon={<i>Hello</i>} />', 'Hello'],
  ['<>Hello</>', 'Hello'],
])('%s is found', (markup, text) => {
  expect(visibleEnglish('a.tsx', `const a = ${markup};`)).toEqual([`a.tsx:1: ${text}`]);
});

test.each([
  '<p className="wide">{en.title}</p>',
  "<p>{kind === 'wide' ? en.a : en.b}</p>",
  "<p>{styles['wide']}</p>",
  "<p>{text('wide')}</p>",
  `<p>{\`\${en.a}: \${en.b}\`}</p>`,
  '<p>12 × 3 %</p>',
  '<a href="#/days" title={en.title} />',
  "<a title={en.titles['wide']} />",
])('%s is let pass', (markup) => {
  expect(visibleEnglish('a.tsx', `const a = ${markup};`)).toEqual([]);
});
