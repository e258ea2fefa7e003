layer symbols
    line 0.25 #141418 : M 7,9 L 13,9 L 13,15 L 7,15 Z
    line 0.25 #141418 : M 21,9 L 27,9 L 27,15 L 21,15 Z
    line 0.25 #141418 : M 35,9 L 41,9 L 41,15 L 35,15 Z
    line 0.25 #141418 : M 49,9 L 55,9 L 55,15 L 49,15 Z
layer tags
  light:day
    line 0.25 #141418 fill #ffffff : M 7,16.2 L 36.7,16.2 L 36.7,21.3 L 7,21.3 Z
    fill #141418 : M 7,16.2 L 12.1,16.2 L 12.1,21.3 L 7,21.3 Z
    "1" at 9.6,17.5, 3.63 mm #ffffff bold centred
    fill #e69646 : M 12.1,16.3 L 13.4,16.3 L 13.4,21.2 L 12.1,21.2 Z
    "600 W LED point" at 14.7,17.9, 2.62 mm #141418 bold
  light:soft
    line 0.25 #141418 fill #ffffff : M 21,2.7 L 50.7,2.7 L 50.7,7.8 L 21,7.8 Z
    fill #141418 : M 21,2.7 L 26.1,2.7 L 26.1,7.8 L 21,7.8 Z
    "2" at 23.6,4, 3.63 mm #ffffff bold centred
    fill #e69646 : M 26.1,2.8 L 27.4,2.8 L 27.4,7.7 L 26.1,7.7 Z
    "300 W LED point" at 28.7,4.3, 2.62 mm #141418 bold
  light:lamp
    line 0.18 #141418 : M 38,22.8 L 38,13.8
    line 0.25 #141418 fill #ffffff : M 8.9,22.8 L 44.3,22.8 L 44.3,30.9 L 8.9,30.9 Z
    fill #141418 : M 8.9,22.8 L 14,22.8 L 14,30.9 L 8.9,30.9 Z
    "3" at 11.5,25.6, 3.63 mm #ffffff bold centred
    fill #e69646 : M 14,22.9 L 15.3,22.9 L 15.3,30.8 L 14,30.8 Z
    "table lamp 40 W" at 16.6,27.7, 2.62 mm #141418 bold
    "2700 K" at 16.6,24.2, 2.62 mm #141418
    "100 %" at 26.6,24.2, 2.62 mm #141418
    "h 1.15" at 35.7,24.2, 2.62 mm #141418
  light:day
    line 0.25 #141418 fill #ffffff : M 51.4,16.2 L 57.8,16.2 L 57.8,21.3 L 51.4,21.3 Z
    fill #141418 : M 51.4,16.2 L 56.5,16.2 L 56.5,21.3 L 51.4,21.3 Z
    "4" at 53.9,17.5, 3.63 mm #ffffff bold centred
    fill #e69646 : M 56.5,16.3 L 57.8,16.3 L 57.8,21.2 L 56.5,21.2 Z
