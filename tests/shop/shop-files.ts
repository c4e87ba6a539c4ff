/** Shop files as people write them: every style of YAML that the reader takes, comments in every corner, and JSON. */
export const SHOP_FILES: Readonly<Record<string, string>> = {
  'nothing at all': '',
  'a comment alone': '# The shop, to be filled in\n',
  'one section in brackets': 'printers: {office: {x: 0.9965, y: 0.998}}\n',
  'all in brackets, with a comma at the end':
    'units: mm\nguide: {graduation: 1, longest: 300, setAt: 1.4, a: 0, b: 1,}\nheads: {pull-45: {bevel: 45, opening: left,},}\n',
  'a line a key': `# Saltmarsh Print Room
units: in

boards:
  # measured with a caliper
  bone-4:
    name: "Bone"       # quotes kept
    thickness: 1.4 mm
    sheets:
      - 32 x 40 in
      - '40 x 60 in'

heads:
  pull-45:
    bevel: 45          # the usual one
    opening: left
    start: 1.2 mm
    stop: -0.4 mm

printers:
  office:
    x: 0.9965          # with the old drum
    y: 0.998

# the end
`,
  'lists of offsets with comments between': `heads:
  pull-45:
    start:   # measured in March
      - {thickness: 1.4 mm, offset: 1.2 mm}   # soft board
      # the thick one was cut twice
      - {thickness: 3 mm, offset: 1.6 mm}
    stop: -0.4 mm
  other: {bevel: 60}
`,
  'a list at the column of its key': `heads:
  pull-45:
    start:
    - {thickness: 1.4 mm, offset: 1.2 mm}
    - {thickness: 3 mm, offset: 1.6 mm}
    stop:
    - thickness: 1.4 mm
      offset: 0
guide:
  a: 0
`,
  'four spaces': `boards:
    bone-4:
        thickness: 1.4 mm
printers:
    office:
        x: 0.99
heads:
    pull-45:
        bevel: 45
`,
  'brackets over several lines': `heads: {
  pull-45: {
    bevel: 45,   # usual
    opening: left   # from the back
  }
}
printers: {
  # none yet
}
`,
  'no line end at the end': 'units: mm\nguide:\n  a: 0.2',
  'CR LF': 'units: mm\r\nprinters:\r\n  office: {x: 0.99}   # old\r\n\r\n# end\r\n',
  'keys in quotes': `"printers":\n  'office': {"x": 0.99, 'y': 1}\n"heads": {"pull-45": {"bevel": 45}}\n`,
  'a document mark before and after': '---\n# shop\nprinters:\n  office: {x: 0.99}\nguide: {b: 1}\n',
  JSON: '{\n  "units": "mm",\n  "printers": {"office": {"x": 0.9965, "y": 0.998}},\n  "heads": {"pull-45": {"bevel": 45}}\n}\n',
  'JSON on one line': '{"guide":{"a":0,"b":1},"printers":{}}',
  'an anchor that nothing here touches': `boards:
  bone-4: &usual {thickness: 1.4 mm}
  slate-4: *usual
guide: {a: 0, b: 1}
`,
  'values over several lines': `boards:
  bone-4: {name: Bone, thickness: 1.4 mm}
heads:
  pull-45:
    scribe: >-
      the notch at its front,
      left of the slide
    blade: 'old # 3'
    bevel: 45
`,
  'a byte order mark': '\ufeffprinters:\n  office: {x: 1}\n',
  'comments everywhere': `# 1
printers: # 2
  # 3
  office: # 4
    # 5
    x: 0.99 # 6
    # 7
  # 8
# 9
guide: # 10
  # 11
  a: 0 # 12
  # 13

# 14
heads: # 15
  pull-45: {bevel: 45} # 16
# 17`,
  'calibrated before': `printers:
  office: {x: 0.9965, y: 0.998, date: 2024-03-01}
calibrations:
  printer:
    - printer: office
      date: 2024-03-01
      sheets:
        - {across: 199.3 mm, down: 199.6 mm}
      result: x 0.9965, y 0.998   # with the old drum
# kept
`,
  'wide gaps and odd order': `guide:      {  b:   1 ,  a:  0.5  }


heads:

  pull-45:

    opening:   right

    bevel:     45


printers:   {   }
`,
};
