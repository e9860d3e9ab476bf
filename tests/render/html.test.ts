import fc from 'fast-check';
import { expect, test } from 'vitest';
import { embeddedJson, escapeHtml, html, joined, trusted } from '../../src/render/html.ts';

test('html escapes what is put in, between tags and in attributes', () => {
  expect(html`<p title="${`"'`}">${'<b> & </b>'}</p>`.toString()).toBe(
    '<p title="&quot;&#39;">&lt;b&gt; &amp; &lt;/b&gt;</p>',
  );
});

test('html keeps what is markup already, joins lists and leaves out what is not there', () => {
  expect(html`${html`<i>a</i>`}${['b', 1, html`<br>`]}${undefined}${null}${false}${0}`.toString()).toBe(
    '<i>a</i>b1<br>0',
  );
});

test('joined(values, between) puts the separator between and escapes both', () => {
  expect(joined(['a', '<'], ' > ').toString()).toBe('a &gt; &lt;');
});

test('escapeHtml(text) leaves no character that markup gives a meaning', () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      const escaped = escapeHtml(text);
      expect(escaped).not.toMatch(/[<>"']/);
      expect(escaped.replace(/&(?:amp|lt|gt|quot|#39);/g, '')).not.toContain('&');
    }),
  );
});

test('embeddedJson(value) cannot close its element and reads back as the value', () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      const text = embeddedJson({ value, end: '</script><!--' }).toString();
      expect(text).not.toContain('<');
      expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify({ value, end: '</script><!--' })));
    }),
  );
});

test('trusted(text) is written as it is', () => {
  expect(html`<p>${trusted('<b>x</b>')}</p>`.toString()).toBe('<p><b>x</b></p>');
});

test('no page holds NUL, ESC or another order to a machine', () => {
  expect(html`<p title="${'a\0b'}">${'c\u001b[2Jd\u0085\tline\nend'}</p>`.toString()).toBe(
    '<p title="a\ufffdb">c\ufffd[2Jd\ufffd\tline\nend</p>',
  );
});
