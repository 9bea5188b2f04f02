"""Run the Kokoro ONNX graph with PyTorch, on a GPU if there is one: the CPU runtime is too slow to speak hours.

    python onnx_torch.py MODEL.onnx GRAPH.pickle      writes the graph in a form that needs no onnx package to read

Weights that the file holds as 8-bit integers become floats; what would be quantised while running stays as it is, which is more
exact than the runtime, not less. Only the operators that the graph uses are here.
"""
import pickle
import sys

import numpy as np
import torch
import torch.nn.functional as F


def convert(path, out):
    import onnx
    from onnx import numpy_helper

    def value(attribute):
        held = onnx.helper.get_attribute_value(attribute)
        if isinstance(held, bytes):
            return held.decode()
        return numpy_helper.to_array(held) if isinstance(held, onnx.TensorProto) else held

    graph = onnx.load(path).graph
    nodes = [(n.op_type, list(n.input), list(n.output), {a.name: value(a) for a in n.attribute}) for n in graph.node]
    held = {t.name: numpy_helper.to_array(t) for t in graph.initializer}
    with open(out, "wb") as file:
        pickle.dump((nodes, held, [i.name for i in graph.input if i.name not in held], [o.name for o in graph.output]), file)


TYPES = {1: torch.float32, 2: torch.uint8, 3: torch.int8, 6: torch.int32, 7: torch.int64, 9: torch.bool, 11: torch.float64}


def ints(x):
    return [int(v) for v in x.reshape(-1).tolist()]


class Graph:
    """The graph, ready to run. Whole numbers (shapes, indices) stay on the CPU; ``factors`` scales results by their name on the way.
    Used by one thread at a time."""

    def __init__(self, path, device):
        with open(path, "rb") as file:
            self.nodes, held, self.inputs, self.outputs = pickle.load(file)
        self.device, self.lstms, self.factors = device, {}, {}
        weights = {name for op, inputs, _, _ in self.nodes if op in ("MatMulInteger", "ConvInteger", "DequantizeLinear") for name in inputs}
        self.held = {}
        for name, array in held.items():
            tensor = torch.from_numpy(np.array(array))
            if array.dtype in (np.float32, np.float16):
                tensor = tensor.float().to(device)
            elif name in weights or array.dtype in (np.int8, np.uint8):
                tensor = tensor.float().to(device)
            self.held[name] = tensor
        last = {}
        for place, (_, inputs, _, _) in enumerate(self.nodes):
            for name in inputs:
                last[name] = place
        self.drop = [[n for n in set(inputs) if last[n] == place and n not in self.held and n not in self.outputs] for place, (_, inputs, _, _) in enumerate(self.nodes)]

    @torch.inference_mode()
    def run(self, **inputs):
        known = dict(inputs)
        for place, (op, names, outputs, attributes) in enumerate(self.nodes):
            x = [None if not n else known[n] if n in known else self.held[n] for n in names]
            if op == "DynamicQuantizeLSTM":
                results = self.lstm(outputs[0], x, attributes)
            else:
                results = getattr(self, op)(attributes, *x)
            if not isinstance(results, (tuple, list)):
                results = (results,)
            for name, result in zip(outputs, results):
                if name:
                    known[name] = result * self.factors[name] if name in self.factors else result
            for name in self.drop[place]:
                known.pop(name, None)
        return [known[o] for o in self.outputs]

    def both(self, a, b):
        """Numbers meet where the floats are."""
        if a.device != b.device:
            return a.to(self.device), b.to(self.device)
        return a, b

    def Shape(self, t, x):
        return torch.tensor(list(x.shape)[t.get("start", 0) : t.get("end")], dtype=torch.int64)

    def Gather(self, t, x, index):
        axis = t.get("axis", 0)
        if index.device != x.device:
            index = index.to(x.device)
        if index.dim() == 0:
            return x.select(axis, int(index))
        index = torch.where(index < 0, index + x.shape[axis], index)
        shape = list(x.shape[:axis]) + list(index.shape) + list(x.shape[axis + 1 :])
        return x.index_select(axis, index.reshape(-1)).reshape(shape)

    def Split(self, t, x, sizes=None):
        axis = t.get("axis", 0)
        return torch.split(x, ints(sizes) if sizes is not None else x.shape[axis] // t["num_outputs"], axis)

    def DequantizeLinear(self, t, x, scale, zero=None):
        x = x.float().to(scale.device)
        return (x - zero.to(x.device).float() if zero is not None else x) * scale

    def DynamicQuantizeLinear(self, t, x):
        return x, torch.ones((), device=x.device), torch.zeros((), device=x.device)

    def Unsqueeze(self, t, x, axes):
        for axis in sorted(a if a >= 0 else a + x.dim() + axes.numel() for a in ints(axes)):
            x = x.unsqueeze(axis)
        return x

    def Squeeze(self, t, x, axes=None):
        if axes is None:
            return x.squeeze()
        for axis in sorted((a % x.dim() for a in ints(axes)), reverse=True):
            x = x.squeeze(axis)
        return x

    def Transpose(self, t, x):
        return x.permute(t.get("perm") or list(range(x.dim()))[::-1])

    def shifted(self, x, zero):
        return x if zero is None else x - zero

    def MatMulInteger(self, t, a, b, a_zero=None, b_zero=None):
        return self.shifted(a, a_zero) @ self.shifted(b, b_zero)

    def ConvInteger(self, t, x, w, x_zero=None, w_zero=None):
        return self.Conv(t, self.shifted(x, x_zero), self.shifted(w, w_zero))

    def MatMul(self, t, a, b):
        return a @ b

    def FusedMatMul(self, t, a, b):
        a = a.transpose(-1, -2) if t.get("transA") else a
        b = b.transpose(-1, -2) if t.get("transB") else b
        return t.get("alpha", 1.0) * (a @ b)

    def Mul(self, t, a, b):
        a, b = self.both(a, b)
        return a * b

    def Add(self, t, a, b):
        a, b = self.both(a, b)
        return a + b

    def Sub(self, t, a, b):
        a, b = self.both(a, b)
        return a - b

    def Div(self, t, a, b):
        a, b = self.both(a, b)
        return a / b if a.is_floating_point() else torch.div(a, b, rounding_mode="trunc")

    def Pow(self, t, a, b):
        a, b = self.both(a, b)
        return a**b

    def Equal(self, t, a, b):
        return torch.eq(*self.both(a, b))

    def Less(self, t, a, b):
        return torch.lt(*self.both(a, b))

    def Greater(self, t, a, b):
        return torch.gt(*self.both(a, b))

    def GreaterOrEqual(self, t, a, b):
        return torch.ge(*self.both(a, b))

    def And(self, t, a, b):
        return torch.logical_and(*self.both(a, b))

    def Where(self, t, condition, a, b):
        where = self.device if any(x.device.type != "cpu" for x in (condition, a, b)) else "cpu"
        return torch.where(condition.to(where), a.to(where), b.to(where))

    def Concat(self, t, *x):
        where = self.device if any(v.device.type != "cpu" for v in x) else "cpu"
        return torch.cat([v.to(where) for v in x], t["axis"])

    def Slice(self, t, x, starts, ends, axes=None, steps=None):
        axes = ints(axes) if axes is not None else range(starts.numel())
        steps = ints(steps) if steps is not None else [1] * starts.numel()
        for start, end, axis, step in zip(ints(starts), ints(ends), axes, steps):
            size = x.shape[axis]
            if step < 0:
                index = torch.tensor(range(size)[slice(start, end if end > -(1 << 60) else None, step)], device=x.device)
                x = x.index_select(axis, index)
            else:
                index = [slice(None)] * x.dim()
                index[axis] = slice(start, min(end, size) if end > 0 else end if end != 0 else 0, step)
                x = x[tuple(index)]
        return x

    def Cast(self, t, x):
        kind = TYPES[t["to"]]
        if x.dtype == kind:
            return x
        return x.to(kind).to(self.device) if kind.is_floating_point else x.to(kind)

    def ConstantOfShape(self, t, shape):
        value = t.get("value", np.zeros(1, "f4"))
        tensor = torch.full(ints(shape), value.reshape(-1)[0].item(), dtype=torch.from_numpy(np.array(value)).dtype)
        return tensor.to(self.device) if tensor.is_floating_point() else tensor

    def Expand(self, t, x, shape):
        shape, own = ints(shape), list(x.shape)
        while len(own) < len(shape):
            own.insert(0, 1)
        while len(shape) < len(own):
            shape.insert(0, 1)
        return x.expand([o if s == 1 else s for s, o in zip(shape, own)])

    def Reshape(self, t, x, shape):
        return x.reshape([x.shape[i] if s == 0 else s for i, s in enumerate(ints(shape))])

    def LayerNormalization(self, t, x, weight, bias=None):
        return F.layer_norm(x, x.shape[t.get("axis", -1) % x.dim() :], weight, bias, t.get("epsilon", 1e-5))

    def SkipLayerNormalization(self, t, x, skip, weight, bias=None, more=None):
        total = x + skip if more is None else x + skip + more
        return F.layer_norm(total, total.shape[-1:], weight, bias, t.get("epsilon", 1e-12)), None, None, total

    def FastGelu(self, t, x, bias=None):
        return F.gelu(x if bias is None else x + bias, approximate="tanh")

    def LeakyRelu(self, t, x):
        return F.leaky_relu(x, t.get("alpha", 0.01))

    def Floor(self, t, x):
        return x.floor()

    def Sqrt(self, t, x):
        return x.sqrt()

    def Sigmoid(self, t, x):
        return x.sigmoid()

    def Tanh(self, t, x):
        return x.tanh()

    def Sin(self, t, x):
        return x.sin()

    def Cos(self, t, x):
        return x.cos()

    def Atan(self, t, x):
        return x.nan_to_num(nan=0.0).atan()

    def Exp(self, t, x):
        return x.exp()

    def Round(self, t, x):
        return x.round()

    def Softmax(self, t, x):
        return x.softmax(t.get("axis", -1))

    def Clip(self, t, x, low=None, high=None):
        return x.clamp(None if low is None else low.item(), None if high is None else high.item())

    def CumSum(self, t, x, axis):
        return x.cumsum(int(axis))

    def Range(self, t, start, limit, delta):
        return torch.arange(start.item(), limit.item(), delta.item(), dtype=start.dtype)

    def reduced(self, t, x, axes):
        axes = ints(axes) if axes is not None else t.get("axes")
        return axes or list(range(x.dim())), bool(t.get("keepdims", 1))

    def ReduceSum(self, t, x, axes=None):
        axes, keep = self.reduced(t, x, axes)
        return x.sum(axes, keepdim=keep)

    def ReduceMean(self, t, x, axes=None):
        axes, keep = self.reduced(t, x, axes)
        return x.mean(axes, keepdim=keep)

    def Resize(self, t, x, roi=None, scales=None, sizes=None):
        target = ints(sizes) if sizes is not None else [int(s * f) for s, f in zip(x.shape, scales.tolist())]
        if t["mode"] == "nearest":
            factor = x.shape[-1] / target[-1] if scales is None else 1 / scales.tolist()[-1]
            index = (torch.arange(target[-1]) * factor + 1e-6).floor().long().clamp(max=x.shape[-1] - 1)
            return x.index_select(x.dim() - 1, index.to(x.device))
        factor = None if scales is None else scales.tolist()[-1]
        return F.interpolate(x, size=target[2:], mode="linear", align_corners=False) if factor is None else F.interpolate(
            x, scale_factor=factor, mode="linear", align_corners=False, recompute_scale_factor=False)

    def padded(self, t, x):
        left, right = t.get("pads", [0, 0])
        return (x, left) if left == right else (F.pad(x, (left, right)), 0)

    def Conv(self, t, x, w, bias=None):
        x, padding = self.padded(t, x)
        return F.conv1d(x, w, bias, t.get("strides", [1])[0], padding, t.get("dilations", [1])[0], t.get("group", 1))

    def ConvTranspose(self, t, x, w, bias=None):
        return F.conv_transpose1d(x, w, bias, t.get("strides", [1])[0], t.get("pads", [0])[0], t.get("output_padding", [0])[0], t.get("group", 1))

    def Pad(self, t, x, pads, value=None, axes=None):
        pads, count = ints(pads), x.dim()
        pairs = [(pads[i], pads[i + count]) for i in range(count)]
        flat = [v for pair in reversed(pairs) for v in pair]
        while len(flat) > 2 and not any(flat[-2:]):
            flat = flat[:-2]
        if t.get("mode", "constant") == "constant":
            return F.pad(x, flat, value=0.0 if value is None else value.item())
        extra = x.dim() == 1
        y = F.pad(x[None, None] if extra else x[None] if x.dim() == 2 else x, flat, mode=t["mode"])
        return y[0, 0] if extra else y[0] if x.dim() == 2 else y

    def STFT(self, t, x, step, window, length=None):
        x = x.reshape(x.shape[0], -1)
        size = int(length) if length is not None else window.numel()
        frames = x.unfold(1, size, int(step)) * window
        return torch.view_as_real(torch.fft.rfft(frames, size))

    def NonZero(self, t, x):
        return x.nonzero().T

    def ScatterND(self, t, x, index, updates):
        x = x.clone()
        x[tuple(index.to(x.device).unbind(-1))] = updates.to(x.device)
        return x

    def lstm(self, key, x, t):
        source, w, r, bias, _, h, c, _, w_scale, w_zero, r_scale, r_zero = x + [None] * (12 - len(x))
        if key not in self.lstms:
            self.lstms[key] = self._lstm(w, r, bias, w_scale, w_zero, r_scale, r_zero, t["hidden_size"])
        state = None if h is None else (h.contiguous(), c.contiguous())
        y, (h, c) = self.lstms[key](source, state)
        steps, batch, both = y.shape
        return y.reshape(steps, batch, 2, both // 2).transpose(1, 2), h, c

    def _lstm(self, w, r, bias, w_scale, w_zero, r_scale, r_zero, hidden):
        def plain(q, scale, zero):
            spread = lambda v: v.reshape(2, 1, -1).float()
            return ((q.float() - spread(zero)) * spread(scale)).transpose(1, 2)

        def reordered(m):
            i, o, f, c = m.split(hidden, 0)
            return torch.cat([i, f, c, o], 0)

        w, r = plain(w, w_scale, w_zero), plain(r, r_scale, r_zero)
        layer = torch.nn.LSTM(w.shape[2], hidden, bidirectional=True).to(self.device)
        for side, suffix in enumerate(("", "_reverse")):
            getattr(layer, "weight_ih_l0" + suffix).data = reordered(w[side]).contiguous()
            getattr(layer, "weight_hh_l0" + suffix).data = reordered(r[side]).contiguous()
            first, second = bias[side].split(4 * hidden)
            getattr(layer, "bias_ih_l0" + suffix).data = reordered(first).contiguous()
            getattr(layer, "bias_hh_l0" + suffix).data = reordered(second).contiguous()
        layer.flatten_parameters()
        return layer.eval()


if __name__ == "__main__":
    convert(sys.argv[1], sys.argv[2])
