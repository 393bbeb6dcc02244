import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { deriveJob } from '../../src/job/derive.ts';
import { readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';
import { checkCards } from '../../src/proof/simulator-check.ts';
import { gritLadder } from '../../src/setups/bench/sanding.ts';

const { workshop } = readWorkshopFile(readFileSync('examples/workshop.yaml', 'utf8'));
const { document } = readJobFile(readFileSync('examples/porch-bench.yaml', 'utf8'));
const plan = (shop = workshop!) => deriveJob(document!, shop, { today: '2026-11-25' }).derived;

describe('clamps stand open before the glue (SET-32)', () => {
  const { setups, piece } = plan();
  const card = (title: string) => setups.setups.find(s => s.title === title)!;
  const figure = (title: string, name: string) =>
    card(title).settings.find(s => s.name === name)?.value.value;

  it('an end frame: one to each line of joints, its outside size and room for cauls', () => {
    // Rails 340 over their bridles, four joints: two clamps that open 400.
    expect(figure('Clamps, End frame', 'clamps 1')).toBe(2);
    expect(figure('Clamps, End frame', 'opening 1')).toBe(400);
  });

  it('boards: within 50 of each end and every 300', () => {
    // 1380 long: 1280 between the outer ones, five spans.
    expect(figure('Clamps, Seat', 'clamps 1')).toBe(6);
  });

  it('says when the workshop has too few', () => {
    const few = plan({ ...workshop!, clamps: [{ length: 600, quantity: 4 }] }).setups.setups;
    expect(few.find(s => s.title === 'Clamps, Seat')?.before.join(' ')).toContain(
      '6 that open 440.0, the workshop has 4',
    );
  });

  it('clamping and sanding cut nothing: they are not counted as cards to repeat', () => {
    const report = checkCards(piece, setups.setups);
    expect(report.setUps).toBe(setups.setups.filter(s => s.removal?.shape !== 'nothing').length);
    expect(report.notSimulated.every(n => n.reason.startsWith('a face or edge'))).toBe(true);
  });
});

describe('sanding goes through the grits (SET-33)', () => {
  it('no step more than half as fine again', () => {
    expect(gritLadder([120, 180])).toEqual([120, 180]);
    expect(gritLadder([80, 240])).toEqual([80, 120, 180, 240]);
    expect(gritLadder([150])).toEqual([150]);
    for (const [from, to] of [
      [80, 320],
      [100, 400],
      [120, 320],
    ] as const) {
      const ladder = gritLadder([from, to]);
      for (let i = 1; i < ladder.length; i++) expect(ladder[i]! / ladder[i - 1]!).toBeLessThanOrEqual(1.51);
    }
  });

  it('stands as a card before the glue-up of its frame', () => {
    const { setups } = plan();
    const sand = setups.setups.find(s => s.title === 'Sand the inside faces of End frame')!;
    const glue = setups.setups.find(s => s.title === 'Clamps, End frame')!;
    expect(sand.number).toBeLessThan(glue.number);
    expect(sand.settings[0]?.name).toBe('grit 1');
  });
});
