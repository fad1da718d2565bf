import { expect, test } from 'vitest';
import { fileNameOf, readTextFile } from '../../src/keep/file.ts';

test('a file is named after its quilt, whatever signs are in the name', () => {
  expect(fileNameOf('Solstice dial')).toBe('solstice-dial.yardwright.json');
  expect(fileNameOf(' ../Été №3 ')).toMatch(/^[\p{L}\p{N}-]+\.yardwright\.json$/u);
  expect(fileNameOf('///')).toBe('quilt.yardwright.json');
});

test('a film dropped by mistake is refused by its size, unread', async () => {
  const film = { name: 'film.mp4', size: 3e9, text: () => Promise.reject(new Error('was read')) };
  expect(await readTextFile(film as unknown as File)).toEqual({
    ok: false,
    why: '"film.mp4" is too large to be a quilt file (3000 MB).',
  });
});

test('a file that cannot be read is said to be so', async () => {
  const gone = { name: 'gone.json', size: 10, text: () => Promise.reject(new Error('it moved')) };
  expect(await readTextFile(gone as unknown as File)).toMatchObject({ ok: false });
});
