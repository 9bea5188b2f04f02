"""The acoustic network: a 15-layer factorised TDNN ("TDNN-F") with two outputs a phone, as Kaldi computes it."""
import numpy as np
import torch
import torch.nn.functional as F
from torch import nn

from lexicon import PHONE_COUNT

LAYERS = range(2, 16)
CONTEXT = 34


class Norm(nn.Module):
    """Kaldi's batch normalisation: no learned scale but a target root mean square."""

    def __init__(self, weights, name):
        super().__init__()
        mean = torch.tensor(weights[f"{name}.mean"])
        self.norm = nn.BatchNorm1d(len(mean), eps=1e-3, affine=False, momentum=0.05)
        self.norm.running_mean[:] = mean
        self.norm.running_var[:] = torch.tensor(weights[f"{name}.var"])
        self.scale = float(weights[f"{name}.rms"])

    def forward(self, x):
        return self.norm(x) * self.scale


def convolution(weights, name, width, biased=True):
    matrix = weights[f"{name}.W"]
    out, inputs = matrix.shape
    layer = nn.Conv1d(inputs // width, out, width, bias=biased)
    layer.weight.data = torch.tensor(matrix).reshape(out, width, inputs // width).transpose(1, 2).contiguous()
    if biased:
        layer.bias.data = torch.tensor(weights[f"{name}.b"])
    return layer


class Network(nn.Module):
    """Made from a dictionary of arrays named as in Kaldi; ``export`` gives such a dictionary back."""

    def __init__(self, weights):
        super().__init__()
        weights = {name: np.asarray(value, "f4") for name, value in weights.items()}
        self.names, self.convolutions, self.norms = {}, nn.ModuleDict(), nn.ModuleDict()
        self._add(weights, "lda", 3)
        self._add(weights, "tdnn1.affine", 1)
        for number in LAYERS:
            width = 1 if number == 5 else 2
            self._add(weights, f"tdnnf{number}.linear", width, biased=False)
            self._add(weights, f"tdnnf{number}.affine", width)
        self._add(weights, "prefinal-l", 1, biased=False)
        self._add(weights, "prefinal-chain.affine", 1)
        self._add(weights, "prefinal-chain.linear", 1, biased=False)
        norms = ["tdnn1.batchnorm", *(f"tdnnf{n}.batchnorm" for n in LAYERS), "prefinal-chain.batchnorm1", "prefinal-chain.batchnorm2"]
        for name in norms:
            self.norms[self._key(name)] = Norm(weights, name)
        self._add(weights, "output.affine", 1)
        if self.convolutions[self._key("output.affine")].out_channels != 2 * PHONE_COUNT:
            raise ValueError("the starting network was trained for another set of phones")

    @staticmethod
    def _key(name):
        return name.replace(".", "_")

    def _add(self, weights, name, width, biased=True):
        self.names[self._key(name)] = name
        self.convolutions[self._key(name)] = convolution(weights, name, width, biased)

    def first(self, count):
        """The first matrices, in the order in which sound goes through them."""
        return list(self.convolutions.values())[:count]

    def conv(self, name, x):
        return self.convolutions[self._key(name)](x)

    def norm(self, name, x):
        return self.norms[self._key(name)](x)

    def forward(self, x, drop=0.0):
        """features (batch, 40, frames) -> scores (batch, frames / 3, 2 * phones)"""
        x = torch.cat([x[:, :, :1].expand(-1, -1, CONTEXT), x, x[:, :, -1:].expand(-1, -1, CONTEXT)], 2)
        x = self.norm("tdnn1.batchnorm", F.relu(self.conv("tdnn1.affine", self.conv("lda", x))))
        for number in LAYERS:
            y = F.relu(self.conv(f"tdnnf{number}.affine", self.conv(f"tdnnf{number}.linear", x)))
            y = self.norm(f"tdnnf{number}.batchnorm", y)
            if drop > 0 and self.training:
                y = y * (1 + drop * 2 * (torch.rand(y.shape[0], y.shape[1], 1, device=y.device) * 2 - 1))
            x = (x[:, :, 1:-1] if y.shape[2] < x.shape[2] else x) * 0.66 + y
            if number == 5:
                x = x[:, :, ::3]
        x = self.norm("prefinal-chain.batchnorm1", F.relu(self.conv("prefinal-chain.affine", self.conv("prefinal-l", x))))
        x = self.norm("prefinal-chain.batchnorm2", self.conv("prefinal-chain.linear", x))
        return self.conv("output.affine", x).transpose(1, 2)

    def export(self):
        arrays = {}
        for key, name in self.names.items():
            layer = self.convolutions[key]
            weight = layer.weight.detach().cpu()
            arrays[f"{name}.W"] = weight.transpose(1, 2).reshape(weight.shape[0], -1).numpy()
            if layer.bias is not None:
                arrays[f"{name}.b"] = layer.bias.detach().cpu().numpy()
        for key, layer in self.norms.items():
            name = key.replace("_", ".", 1)
            arrays[f"{name}.mean"] = layer.norm.running_mean.cpu().numpy()
            arrays[f"{name}.var"] = layer.norm.running_var.cpu().numpy()
            arrays[f"{name}.rms"] = np.float32(layer.scale)
        return arrays
