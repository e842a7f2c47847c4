"""The horses of the demo, one file each, named after the horse; its docstring tells the story."""

from tests.demo.horses import (
    bracken,
    bramble,
    clover,
    dunlin,
    fennel,
    hawthorn,
    linnet,
    moss,
    nutmeg,
    otter,
    pippin,
    rowan,
    sorrel,
    tansy,
    teasel,
)

PLANS = tuple(
    module.PLAN
    for module in (
        *(bramble, fennel, moss, pippin, tansy),
        *(clover, linnet, otter, sorrel, teasel),
        *(bracken, dunlin, hawthorn, nutmeg, rowan),
    )
)
