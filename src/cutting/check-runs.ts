/** Runs of grain, checked from the plan: on one sheet, in their order, a kerf apart, in line. */
import type { CuttingPlan, Demand, Placed } from '../results/cutting.ts';

const TOLERANCE = 0.021;

export function runsAreWhole(plan: CuttingPlan, demands: readonly Demand[], faults: string[]): void {
  const words = new Set(demands.flatMap(demand => demand.run?.word ?? []));
  const uses = plan.materials.flatMap(material => material.uses);
  for (const word of words) {
    const members = demands.filter(demand => demand.run?.word === word).sort((a, b) => a.run!.at - b.run!.at);
    const found = members.map(member => {
      const use = uses.find(one => one.placed.some(placed => placed.instance === member.instance));
      return { use, placed: use?.placed.find(placed => placed.instance === member.instance) };
    });
    const [first] = found;
    const parts = new Set(members.map(one => `${one.material} ${one.thickness} ${one.across} ${one.kind}`));
    if (!first?.use || members.length < 2 || parts.size > 1 || members[0]!.kind !== 'sheet') continue;
    if (first.use.kept || found.some(one => one.use?.kept)) continue;
    const lie = members[0]!.run!.lie;
    for (let i = 1; i < found.length; i++) {
      const [a, b] = [found[i - 1]!.placed, found[i]!.placed];
      const together = found[i]!.use === first.use && a && b && follows(a, b, lie, first.use.kerf);
      if (!together) faults.push(`${word}: ${members[i]!.instance} does not follow on in the grain`);
    }
  }
}

function follows(a: Placed, b: Placed, lie: 'end to end' | 'side by side', kerf: number): boolean {
  const alongX = (lie === 'end to end') !== a.turned;
  const gap = alongX ? b.x - a.x - a.length : b.y - a.y - a.width;
  const inLine = alongX ? b.y - a.y : b.x - a.x;
  return a.turned === b.turned && Math.abs(gap - kerf) < TOLERANCE && Math.abs(inLine) < TOLERANCE;
}
