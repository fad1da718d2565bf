import fc from 'fast-check';
import { expect, test } from 'vitest';
import { change, redo, startHistory, undo } from '../../src/keep/history.ts';

test('undo and redo walk the same line', () => {
  const line = change(change(startHistory('a'), 'b'), 'c');
  expect(undo(line).present).toBe('b');
  expect(undo(undo(undo(line))).present).toBe('a');
  expect(redo(undo(line))).toEqual(line);
  expect(redo(line)).toBe(line);
});

test('a change after an undo forgets what was undone', () => {
  const line = change(undo(change(startHistory(1), 2)), 3);
  expect(line).toEqual({ past: [1], present: 3, future: [] });
});

test('however one walks, undoing all comes back to the start', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom('change', 'undo', 'redo'), { maxLength: 60 }), (steps) => {
      let next = 0;
      let line = startHistory(0);
      for (const step of steps) {
        line = step === 'change' ? change(line, ++next) : step === 'undo' ? undo(line) : redo(line);
      }
      while (line.past.length > 0) {
        line = undo(line);
      }
      expect(line.present).toBe(0);
    }),
  );
});
