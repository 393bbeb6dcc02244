/** A small table that derives as it stands: the shortest honest start for a piece of one's own. */
export function newJobText(name: string): string {
  const title =
    name
      .replace(/[-_]+/g, ' ')
      .replace(/[^\p{L}\p{N} ]/gu, '')
      .trim() || 'New piece';
  return `scantling: job/1
title: ${JSON.stringify(title.charAt(0).toUpperCase() + title.slice(1))}
units: mm
brief: |
  Who it is for, what it must do, and what is not included.
# The room it will stand in: without it movement cannot be judged.
site:
  name: Living room
  humidity: { low: 40, high: 60 }
  temperature: { low: 18, high: 24 }

# Sizes you may change; everything else follows.
parameters:
  length: { value: 900, label: Length }
  depth: { value: 550, label: Depth }
  height: { value: 740, label: Height }
  top: { value: 22, label: Top thickness }
  leg: { value: 45, label: Leg }
  overhang: { value: 30, label: Overhang }
  rail: { value: 80, label: Rail height }

parts:
  leg:
    name: Leg
    kind: timber
    material: ash-european
    length: height - top
    width: leg
    thickness: leg
    along: up
    facing: front
    at: { left: overhang, front: overhang, bottom: 0 }
    mirror: { x: length / 2, y: depth / 2 }
  long_rail:
    name: Long rail
    kind: timber
    material: ash-european
    width: rail
    thickness: 22
    along: right
    facing: front
    at: { left: leg.right, right: leg_x.left, front: leg.front + 6 mm, top: leg.top }
    mirror: { y: depth / 2 }
  end_rail:
    name: End rail
    kind: timber
    material: ash-european
    width: rail
    thickness: 22
    along: back
    facing: left
    at: { left: leg.left + 6 mm, front: leg.back, back: leg_y.front, top: leg.top }
    mirror: { x: length / 2 }
  top_board:
    name: Top board
    kind: timber
    material: ash-european
    length: length
    width: depth / 3
    thickness: top
    along: right
    facing: up
    at: { left: 0, front: 0, top: height }
    repeat: { count: 3, along: y, step: depth / 3 }

joints:
  long_to_leg: { type: mortise-and-tenon, from: long_rail, into: leg, count: 4, set: { tenon.length: 25, tip: mitred } }
  end_to_leg: { type: mortise-and-tenon, from: end_rail, into: leg, count: 4, set: { tenon.length: 25, tip: mitred } }
  top_edges: { type: edge-glued, from: top_board, into: top_board, count: 2 }
  # The middle of the top is fixed, its edges sit on slots: solid wood moves with the seasons.
  top_middle: { type: screwed, from: end_rail, into: top_board_2, count: 2, set: { size: '4.0', sunk: 55, length: 40, screws: 1 } }
  top_slots:
    type: screwed
    from: end_rail
    into: top_board
    pair: [[end_rail, top_board], [end_rail, top_board_3], [end_rail_x, top_board], [end_rail_x, top_board_3]]
    count: 4
    set: { size: '4.0', sunk: 55, length: 40, screws: 1, slot: 6 }

assemblies:
  end: { name: End frame, parts: [leg, leg_y, end_rail], glue: pva-d3, mirror: x }
  frame: { name: Frame, parts: [long_rail, long_rail_y], assemblies: [end, end_x], glue: pva-d3 }
  table_top: { name: Top, parts: [top_board], glue: pva-d3, dry_fit: false }

finishes:
  oil:
    name: Hardwax oil
    on: [all]
    steps:
      sand: { kind: prepare, name: Sand to 180, grit: 180 }
      first: { kind: coat, name: First coat, product: hardwax-oil }
      second: { kind: coat, name: Second coat, product: hardwax-oil }
`;
}
