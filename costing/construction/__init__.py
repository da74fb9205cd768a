"""What is woven and how its warp is laid out: counts, cloth, ropes and sets.

All of it is arithmetic on definitions, so every figure here can be worked again by hand.
"""
