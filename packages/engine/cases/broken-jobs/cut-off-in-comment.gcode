G1 X10 Y20 F3000
G1 X40 (the first lay