"""STOPs: what stands and what it forbids, which fresh finding lifts it, who may go on after."""
