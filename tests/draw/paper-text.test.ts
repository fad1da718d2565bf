import { jsPDF } from 'jspdf';
import { expect, test } from 'vitest';
import { paperFaces } from '../../src/cli/paper-faces.ts';
import { paperText, paperTextWidth } from '../../src/draw/paper-text.ts';

test('fractions of every denominator are built up, other strokes are left', () => {
  expect(paperText('1 3/16 in')).toBe('1³⁄₁₆ in');
  expect(paperText('21/32')).toBe('²¹⁄₃₂');
  expect(paperText('3 / 4')).toBe('3 / 4');
  expect(paperText('Ł ≈ 漢')).toBe('Ł ~ ?');
});

test('widths are those that the PDF writer finds in the faces', () => {
  const doc = new jsPDF({ unit: 'pt' });
  for (const [style, bytes] of Object.entries({ normal: paperFaces().regular, bold: paperFaces().bold })) {
    doc.addFileToVFS(`${style}.ttf`, Buffer.from(bytes).toString('base64'));
    doc.addFont(`${style}.ttf`, 'Face', style);
    doc.setFont('Face', style).setFontSize(10);
    for (const text of ['Foxglove spires', '1 3/16 in, 5/64', 'Überwurf Łódź', '“B1m*” × 12 · 45°']) {
      expect(paperTextWidth(text, 10, style === 'bold')).toBeCloseTo(doc.getTextWidth(paperText(text)), 1);
    }
  }
});
