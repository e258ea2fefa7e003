layer walls-and-openings
    fill #18181c : M 5,20 L 35,20 L 35,24 L 5,24 Z
layer furniture
  furniture:glass A mirror.
    line 0.25 #18181c round fill #ffffff : M 12,19.4 L 28,19.4 L 28,20 L 12,20 Z
    line 0.7 #18181c : M 12,19.4 L 28,19.4
    line 0.18 #18181c : M 17,16.1 L 20,19.1 L 22.6,16.5
    fill #18181c : M 23,16.1 L 22.3,17 L 22,16.8 Z
