datumrow: 1
title: Boathouse reading wall
units: in

planks:
  width: 2 3/4
  thickness: 1/2
  reveal: 1/16
  least: 3/4

start: 2 1/4

saw:
  kerf: 150
  square: 1/4

faces:
- name: north
  width: 141 3/8
  floor:
  - {at: 0, down: 40 1/2}
  - {at: 141 3/8, down: 39 15/16}
  ceiling:
  - {at: 0, up: 53}
  - {at: 70, up: 53 3/16}
  - {at: 141 3/8, up: 52 7/8}
  corner: {kind: inside, joint: butt}
  studs: {first: 14 1/4, spacing: 16}
  openings:
  - name: window
    kind: window
    left: 52
    bottom: -4
    width: 36
    height: 41 1/2
  - name: desk outlet
    kind: box
    left: 37
    bottom: -27 1/2
    width: 2 1/4
    height: 3 3/4
    clear: 1/16
  - name: lamp outlet
    kind: box
    left: 107
    bottom: 18 1/2
    width: 2 1/4
    height: 3 3/4
    clear: 1/16

- name: east
  width: 60
  floor:
  - {at: 0, down: 39 15/16}
  ceiling:
  - {at: 0, up: 52 7/8}

stock:
- {length: 142 1/2, count: 40}
- {length: 61, count: 40}
- {length: 54 1/2, count: 40}
