"""Read the weights of a Kaldi nnet3 chain model and write a model with other weights and another transition model."""
import re
import struct

import numpy as np

from lexicon import PHONE_COUNT, PHONES, SILENCE, UNKNOWN_WORD

POSITIONS = "BIES"
KALDI_PHONES = 2 + len(PHONES) * len(POSITIONS)


def kaldi_phone(phone, position):
    """Number of a phone at a place in the word (begin, inside, end, single): 1 is silence, 2 the unknown word."""
    if phone == SILENCE:
        return 1
    if phone == UNKNOWN_WORD:
        return 2
    return 3 + (phone - 1) * len(POSITIONS) + POSITIONS.index(position)


def plain_phone(number):
    if number <= 2:
        return SILENCE if number == 1 else UNKNOWN_WORD
    return (number - 3) // len(POSITIONS) + 1


def _integer(value):
    return b"\x04" + struct.pack("<i", value)


def _real(value):
    return b"\x04" + struct.pack("<f", value)


def _integers(values):
    return b"\x04" + struct.pack(f"<i{len(values)}i", len(values), *values)


def _array(values):
    values = np.ascontiguousarray(values, dtype="<f4")
    if values.ndim == 2:
        return b"FM " + _integer(values.shape[0]) + _integer(values.shape[1]) + values.tobytes()
    return b"FV " + _integer(len(values)) + values.tobytes()


def transition_model():
    """Two states a phone (enter, stay), outputs shared by the four word positions, all probabilities one half."""
    phones = list(range(1, KALDI_PHONES + 1))
    result = b"<TransitionModel> <Topology> " + _integers(phones) + _integers([-1] + [0] * KALDI_PHONES) + _integer(-1)
    result += _integer(1) + _integer(2) + _integer(0) + _integer(1) + _integer(2)
    result += _integer(0) + _real(0.5) + _integer(1) + _real(0.5) + _integer(-1) + _integer(-1) + _integer(0)
    result += b"</Topology> <Tuples> " + _integer(KALDI_PHONES)
    for phone in phones:
        output = 2 * plain_phone(phone)
        result += _integer(phone) + _integer(0) + _integer(output) + _integer(output + 1)
    logs = np.full(2 * KALDI_PHONES + 1, np.log(0.5), "f4")
    logs[0] = 0
    return result + b"</Tuples> <LogProbs> " + _array(logs) + b"</LogProbs> </TransitionModel> "


class KaldiModel:
    """The bytes of a model file cut into components. Not changed after reading."""

    def __init__(self, path):
        with open(path, "rb") as file:
            self.content = file.read()
        start, count = self.content.find(b"<Nnet3>"), self.content.find(b"<NumComponents>")
        self.config = self.content[start + len(b"<Nnet3> ") : count].decode("latin1")
        self.end = self.content.rfind(b"</Nnet3>")
        found = [(m.start(), m.group(1).decode()) for m in re.finditer(rb"<ComponentName> ([\w.\-]+) ", self.content)]
        places = [place for place, _ in found] + [self.end]
        self.components = {name: self.content[places[i] : places[i + 1]] for i, (_, name) in enumerate(found)}

    @staticmethod
    def _locate(component, token):
        place = component.find(token.encode() + b" ") + len(token) + 1
        kind = component[place : place + 3]
        if kind == b"FM ":
            rows, columns = struct.unpack("<i", component[place + 4 : place + 8]) + struct.unpack("<i", component[place + 9 : place + 13])
            data, shape = place + 13, (rows, columns)
        elif kind == b"FV ":
            (length,) = struct.unpack("<i", component[place + 4 : place + 8])
            data, shape = place + 8, (length,)
        else:
            raise ValueError(f"{token} holds no matrix or vector")
        end = data + 4 * int(np.prod(shape))
        return np.frombuffer(component[data:end], "<f4").reshape(shape).copy(), place, end

    def array(self, name, token):
        return self._locate(self.components[name], token)[0]

    def number(self, name, token):
        component = self.components[name]
        place = component.find(token.encode() + b" ") + len(token) + 1
        return struct.unpack("<f", component[place + 1 : place + 5])[0]

    def weights(self):
        """All arrays of the network, named as network.Network takes them."""
        arrays = {}
        for name in self.components:
            if "xent" in name:
                continue
            if "batchnorm" in name:
                arrays[f"{name}.mean"] = self.array(name, "<StatsMean>")
                arrays[f"{name}.var"] = self.array(name, "<StatsVar>")
                arrays[f"{name}.rms"] = np.float32(self.number(name, "<TargetRms>"))
            elif name in ("prefinal-l", "prefinal-chain.linear"):
                arrays[f"{name}.W"] = self.array(name, "<Params>")
            elif name == "lda":
                arrays["lda.W"], arrays["lda.b"] = self.array(name, "<LinearParams>")[:, :120], self.array(name, "<BiasParams>")
            elif name.endswith("affine"):
                arrays[f"{name}.W"], arrays[f"{name}.b"] = self.array(name, "<LinearParams>"), self.array(name, "<BiasParams>")
            elif name.endswith("linear"):
                arrays[f"{name}.W"] = self.array(name, "<LinearParams>")
        return arrays

    def write(self, path, weights):
        """Write this network with other weights, without cross-entropy branch and i-vector input."""
        lines = [x for x in self.config.split("\n") if "xent" not in x and "input-node name=ivector" not in x]
        config = "\n".join(lines).replace(", ReplaceIndex(ivector, t, 0))", ")")
        kept = [self._with_weights(name, weights) for name in self.components if "xent" not in name]
        with open(path, "wb") as file:
            file.write(b"\0B" + transition_model() + b"<Nnet3> " + config.encode("latin1"))
            file.write(b"<NumComponents> " + _integer(len(kept)) + b"".join(kept) + self.content[self.end :])

    def _with_weights(self, name, weights):
        component = self.components[name]
        for token, key in (("<LinearParams>", "W"), ("<Params>", "W"), ("<BiasParams>", "b"), ("<StatsMean>", "mean"), ("<StatsVar>", "var")):
            values = weights.get(f"{name}.{key}")
            if values is not None and token.encode() + b" " in component:
                _, place, end = self._locate(component, token)
                component = component[:place] + _array(values) + component[end:]
        return component
