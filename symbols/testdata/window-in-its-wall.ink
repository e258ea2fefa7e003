layer walls-and-openings
    fill #18181c : M 10,5 L 14,5 L 14,55 L 10,55 Z
  opening:street A window.
    fill #ffffff : M 14,16 L 14,40 L 10,40 L 10,16 Z
    line 0.18 #18181c : M 14,16 L 14,40 M 10,16 L 10,40
    line 0.25 #18181c : M 12.3,16 L 12.3,40
    line 0.25 #18181c : M 11.7,16 L 11.7,40
    fill #18181c : M 12.8,23.6 L 12.8,24.4 L 11.2,24.4 L 11.2,23.6 Z
    fill #18181c : M 12.8,31.6 L 12.8,32.4 L 11.2,32.4 L 11.2,31.6 Z
    line 0.35 #18181c : M 14,16 L 10,16 M 14,40 L 10,40
