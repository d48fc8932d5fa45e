import {createRequire} from 'module';const require=createRequire(import.meta.url);

// tests/fuzz/check.ts
import { readdirSync, readFileSync as readFileSync2 } from "node:fs";
import { join as join2 } from "node:path";

// grammar/lanes/patterns.ts
var accidental = "(?:##|#|bb|b|n)";
var name = "[A-Za-z]\\w*";
var layered = `${name}(?:\\.\\d+)?`;
var names = `${layered}(?:,${layered}){0,99}`;
var readings = `:!?${names}`;
var tie = `(?:\\[=\\]|=)\\??(?:${readings})?`;
var value = "(?:Mx|L|B|\\d+)\\.*(?:x(?:\\d+in\\d+)?)?\\??";
var drawn = `(?:\\[${accidental}\\]|\\(${accidental}\\))`;
var spelling = `[a-g]${accidental}?${drawn}?\\d?\\??`;
var mark = ["[1-5](?:-[1-5])*", "##|#|bb|b|n", `\\.(?:[a-g]${accidental}?\\d|~)?`, `${name}~?`].join("|");
var label = `${layered}\\??`;
var labels = `${label}(?:,${label}){0,99}:`;
var inRound = '[^()"\\n/]*(?:/(?!/)[^()"\\n/]*){0,99}';
var string = '(?:"[^"\\n]*"){1,1000}';
var annotation = `\\*(?:${string}|${name})`;
var source = {
  accidental,
  drawn,
  name,
  readings,
  tie,
  value,
  spelling,
  string,
  labels,
  /** What may stand after a note, rest, gap or mark. */
  afterEvent: "(?!(?!//|:\\|)[^'*\\s|{}<>;,&-])",
  /** What may stand after a value or a word of its own. */
  afterWord: '(?!(?!//|:\\|)[^\\s|{}<>;(",&])',
  mark: `'(?:\\[(?:${mark})\\]|(?:${mark}))\\??\\+?(?:\\(${inRound}\\))?(?:${readings})?`,
  annotation,
  inRound,
  spanHead: `\\{(?:\\d+in\\d+|[A-Za-z]+(?:[ \\t]+(?:\\d+:\\d+|\\d+in\\d+))?)(?:${readings})?(?!(?!//)[^\\s}])`,
  optionHead: `<(?:${name}(?:${annotation}){0,99}[ \\t]+)?${labels}`,
  optionNext: `;[ \\t]*${labels}`,
  barline: "(?::\\|\\|:|:\\|\\||\\|\\|:|\\|\\|\\||\\|\\||\\|)(?![|:])(?:\\[\\])?"
};
var whole = (pattern) => new RegExp(`^(?:${pattern})$`);

// grammar/lanes/barline.ts
var EDITORS = "[]";
var drawnBarline = whole(source.barline);
function barlineOf(token2, problems) {
  const at = { pos: token2.startOffset, len: token2.image.length };
  const editors = token2.image.endsWith(EDITORS);
  const drawn3 = editors ? token2.image.slice(0, -EDITORS.length) : token2.image;
  const isKnown = drawnBarline.test(drawn3);
  if (!isKnown) {
    problems.push({
      code: "bad-barline",
      ...at,
      slots: { text: drawn3.slice(0, 20) },
      fixes: [{ title: "write a single barline", edits: [{ ...at, text: "|" }] }]
    });
  }
  return { kind: "barline", ...at, shape: isKnown ? drawn3 : "|", editors, suffixes: [] };
}
var barlineJoint = (above, below) => ({
  code: "barline-joint",
  pos: below.pos,
  len: below.len,
  slots: { above: above.shape, below: below.shape }
});
var agree = (above, below) => above.shape === "|" || below.shape === "|" || above.shape === below.shape;
function joinedBarline(above, below, problems) {
  if (!agree(above, below)) problems.push(barlineJoint(above, below));
  const suffixes2 = [...above.suffixes, ...below.suffixes];
  return {
    ...above,
    shape: above.shape === "|" ? below.shape : above.shape,
    editors: above.editors || below.editors,
    suffixes: suffixes2,
    again: { pos: below.pos, len: below.len }
  };
}

// node_modules/lodash-es/_freeGlobal.js
var freeGlobal = typeof global == "object" && global && global.Object === Object && global;
var freeGlobal_default = freeGlobal;

// node_modules/lodash-es/_root.js
var freeSelf = typeof self == "object" && self && self.Object === Object && self;
var root = freeGlobal_default || freeSelf || Function("return this")();
var root_default = root;

// node_modules/lodash-es/_Symbol.js
var Symbol = root_default.Symbol;
var Symbol_default = Symbol;

// node_modules/lodash-es/_getRawTag.js
var objectProto = Object.prototype;
var hasOwnProperty = objectProto.hasOwnProperty;
var nativeObjectToString = objectProto.toString;
var symToStringTag = Symbol_default ? Symbol_default.toStringTag : void 0;
function getRawTag(value2) {
  var isOwn = hasOwnProperty.call(value2, symToStringTag), tag = value2[symToStringTag];
  try {
    value2[symToStringTag] = void 0;
    var unmasked = true;
  } catch (e) {
  }
  var result = nativeObjectToString.call(value2);
  if (unmasked) {
    if (isOwn) {
      value2[symToStringTag] = tag;
    } else {
      delete value2[symToStringTag];
    }
  }
  return result;
}
var getRawTag_default = getRawTag;

// node_modules/lodash-es/_objectToString.js
var objectProto2 = Object.prototype;
var nativeObjectToString2 = objectProto2.toString;
function objectToString(value2) {
  return nativeObjectToString2.call(value2);
}
var objectToString_default = objectToString;

// node_modules/lodash-es/_baseGetTag.js
var nullTag = "[object Null]";
var undefinedTag = "[object Undefined]";
var symToStringTag2 = Symbol_default ? Symbol_default.toStringTag : void 0;
function baseGetTag(value2) {
  if (value2 == null) {
    return value2 === void 0 ? undefinedTag : nullTag;
  }
  return symToStringTag2 && symToStringTag2 in Object(value2) ? getRawTag_default(value2) : objectToString_default(value2);
}
var baseGetTag_default = baseGetTag;

// node_modules/lodash-es/isObjectLike.js
function isObjectLike(value2) {
  return value2 != null && typeof value2 == "object";
}
var isObjectLike_default = isObjectLike;

// node_modules/lodash-es/isSymbol.js
var symbolTag = "[object Symbol]";
function isSymbol(value2) {
  return typeof value2 == "symbol" || isObjectLike_default(value2) && baseGetTag_default(value2) == symbolTag;
}
var isSymbol_default = isSymbol;

// node_modules/lodash-es/_arrayMap.js
function arrayMap(array, iteratee) {
  var index = -1, length = array == null ? 0 : array.length, result = Array(length);
  while (++index < length) {
    result[index] = iteratee(array[index], index, array);
  }
  return result;
}
var arrayMap_default = arrayMap;

// node_modules/lodash-es/isArray.js
var isArray = Array.isArray;
var isArray_default = isArray;

// node_modules/lodash-es/_baseToString.js
var INFINITY = 1 / 0;
var symbolProto = Symbol_default ? Symbol_default.prototype : void 0;
var symbolToString = symbolProto ? symbolProto.toString : void 0;
function baseToString(value2) {
  if (typeof value2 == "string") {
    return value2;
  }
  if (isArray_default(value2)) {
    return arrayMap_default(value2, baseToString) + "";
  }
  if (isSymbol_default(value2)) {
    return symbolToString ? symbolToString.call(value2) : "";
  }
  var result = value2 + "";
  return result == "0" && 1 / value2 == -INFINITY ? "-0" : result;
}
var baseToString_default = baseToString;

// node_modules/lodash-es/_trimmedEndIndex.js
var reWhitespace = /\s/;
function trimmedEndIndex(string3) {
  var index = string3.length;
  while (index-- && reWhitespace.test(string3.charAt(index))) {
  }
  return index;
}
var trimmedEndIndex_default = trimmedEndIndex;

// node_modules/lodash-es/_baseTrim.js
var reTrimStart = /^\s+/;
function baseTrim(string3) {
  return string3 ? string3.slice(0, trimmedEndIndex_default(string3) + 1).replace(reTrimStart, "") : string3;
}
var baseTrim_default = baseTrim;

// node_modules/lodash-es/isObject.js
function isObject(value2) {
  var type = typeof value2;
  return value2 != null && (type == "object" || type == "function");
}
var isObject_default = isObject;

// node_modules/lodash-es/toNumber.js
var NAN = 0 / 0;
var reIsBadHex = /^[-+]0x[0-9a-f]+$/i;
var reIsBinary = /^0b[01]+$/i;
var reIsOctal = /^0o[0-7]+$/i;
var freeParseInt = parseInt;
function toNumber(value2) {
  if (typeof value2 == "number") {
    return value2;
  }
  if (isSymbol_default(value2)) {
    return NAN;
  }
  if (isObject_default(value2)) {
    var other = typeof value2.valueOf == "function" ? value2.valueOf() : value2;
    value2 = isObject_default(other) ? other + "" : other;
  }
  if (typeof value2 != "string") {
    return value2 === 0 ? value2 : +value2;
  }
  value2 = baseTrim_default(value2);
  var isBinary2 = reIsBinary.test(value2);
  return isBinary2 || reIsOctal.test(value2) ? freeParseInt(value2.slice(2), isBinary2 ? 2 : 8) : reIsBadHex.test(value2) ? NAN : +value2;
}
var toNumber_default = toNumber;

// node_modules/lodash-es/toFinite.js
var INFINITY2 = 1 / 0;
var MAX_INTEGER = 17976931348623157e292;
function toFinite(value2) {
  if (!value2) {
    return value2 === 0 ? value2 : 0;
  }
  value2 = toNumber_default(value2);
  if (value2 === INFINITY2 || value2 === -INFINITY2) {
    var sign = value2 < 0 ? -1 : 1;
    return sign * MAX_INTEGER;
  }
  return value2 === value2 ? value2 : 0;
}
var toFinite_default = toFinite;

// node_modules/lodash-es/toInteger.js
function toInteger(value2) {
  var result = toFinite_default(value2), remainder = result % 1;
  return result === result ? remainder ? result - remainder : result : 0;
}
var toInteger_default = toInteger;

// node_modules/lodash-es/identity.js
function identity(value2) {
  return value2;
}
var identity_default = identity;

// node_modules/lodash-es/isFunction.js
var asyncTag = "[object AsyncFunction]";
var funcTag = "[object Function]";
var genTag = "[object GeneratorFunction]";
var proxyTag = "[object Proxy]";
function isFunction(value2) {
  if (!isObject_default(value2)) {
    return false;
  }
  var tag = baseGetTag_default(value2);
  return tag == funcTag || tag == genTag || tag == asyncTag || tag == proxyTag;
}
var isFunction_default = isFunction;

// node_modules/lodash-es/_coreJsData.js
var coreJsData = root_default["__core-js_shared__"];
var coreJsData_default = coreJsData;

// node_modules/lodash-es/_isMasked.js
var maskSrcKey = (function() {
  var uid = /[^.]+$/.exec(coreJsData_default && coreJsData_default.keys && coreJsData_default.keys.IE_PROTO || "");
  return uid ? "Symbol(src)_1." + uid : "";
})();
function isMasked(func) {
  return !!maskSrcKey && maskSrcKey in func;
}
var isMasked_default = isMasked;

// node_modules/lodash-es/_toSource.js
var funcProto = Function.prototype;
var funcToString = funcProto.toString;
function toSource(func) {
  if (func != null) {
    try {
      return funcToString.call(func);
    } catch (e) {
    }
    try {
      return func + "";
    } catch (e) {
    }
  }
  return "";
}
var toSource_default = toSource;

// node_modules/lodash-es/_baseIsNative.js
var reRegExpChar = /[\\^$.*+?()[\]{}|]/g;
var reIsHostCtor = /^\[object .+?Constructor\]$/;
var funcProto2 = Function.prototype;
var objectProto3 = Object.prototype;
var funcToString2 = funcProto2.toString;
var hasOwnProperty2 = objectProto3.hasOwnProperty;
var reIsNative = RegExp(
  "^" + funcToString2.call(hasOwnProperty2).replace(reRegExpChar, "\\$&").replace(/hasOwnProperty|(function).*?(?=\\\()| for .+?(?=\\\])/g, "$1.*?") + "$"
);
function baseIsNative(value2) {
  if (!isObject_default(value2) || isMasked_default(value2)) {
    return false;
  }
  var pattern = isFunction_default(value2) ? reIsNative : reIsHostCtor;
  return pattern.test(toSource_default(value2));
}
var baseIsNative_default = baseIsNative;

// node_modules/lodash-es/_getValue.js
function getValue(object, key) {
  return object == null ? void 0 : object[key];
}
var getValue_default = getValue;

// node_modules/lodash-es/_getNative.js
function getNative(object, key) {
  var value2 = getValue_default(object, key);
  return baseIsNative_default(value2) ? value2 : void 0;
}
var getNative_default = getNative;

// node_modules/lodash-es/_WeakMap.js
var WeakMap2 = getNative_default(root_default, "WeakMap");
var WeakMap_default = WeakMap2;

// node_modules/lodash-es/_baseCreate.js
var objectCreate = Object.create;
var baseCreate = /* @__PURE__ */ (function() {
  function object() {
  }
  return function(proto) {
    if (!isObject_default(proto)) {
      return {};
    }
    if (objectCreate) {
      return objectCreate(proto);
    }
    object.prototype = proto;
    var result = new object();
    object.prototype = void 0;
    return result;
  };
})();
var baseCreate_default = baseCreate;

// node_modules/lodash-es/_apply.js
function apply(func, thisArg, args) {
  switch (args.length) {
    case 0:
      return func.call(thisArg);
    case 1:
      return func.call(thisArg, args[0]);
    case 2:
      return func.call(thisArg, args[0], args[1]);
    case 3:
      return func.call(thisArg, args[0], args[1], args[2]);
  }
  return func.apply(thisArg, args);
}
var apply_default = apply;

// node_modules/lodash-es/noop.js
function noop() {
}
var noop_default = noop;

// node_modules/lodash-es/_copyArray.js
function copyArray(source2, array) {
  var index = -1, length = source2.length;
  array || (array = Array(length));
  while (++index < length) {
    array[index] = source2[index];
  }
  return array;
}
var copyArray_default = copyArray;

// node_modules/lodash-es/_shortOut.js
var HOT_COUNT = 800;
var HOT_SPAN = 16;
var nativeNow = Date.now;
function shortOut(func) {
  var count = 0, lastCalled = 0;
  return function() {
    var stamp = nativeNow(), remaining = HOT_SPAN - (stamp - lastCalled);
    lastCalled = stamp;
    if (remaining > 0) {
      if (++count >= HOT_COUNT) {
        return arguments[0];
      }
    } else {
      count = 0;
    }
    return func.apply(void 0, arguments);
  };
}
var shortOut_default = shortOut;

// node_modules/lodash-es/constant.js
function constant(value2) {
  return function() {
    return value2;
  };
}
var constant_default = constant;

// node_modules/lodash-es/_defineProperty.js
var defineProperty = (function() {
  try {
    var func = getNative_default(Object, "defineProperty");
    func({}, "", {});
    return func;
  } catch (e) {
  }
})();
var defineProperty_default = defineProperty;

// node_modules/lodash-es/_baseSetToString.js
var baseSetToString = !defineProperty_default ? identity_default : function(func, string3) {
  return defineProperty_default(func, "toString", {
    "configurable": true,
    "enumerable": false,
    "value": constant_default(string3),
    "writable": true
  });
};
var baseSetToString_default = baseSetToString;

// node_modules/lodash-es/_setToString.js
var setToString = shortOut_default(baseSetToString_default);
var setToString_default = setToString;

// node_modules/lodash-es/_arrayEach.js
function arrayEach(array, iteratee) {
  var index = -1, length = array == null ? 0 : array.length;
  while (++index < length) {
    if (iteratee(array[index], index, array) === false) {
      break;
    }
  }
  return array;
}
var arrayEach_default = arrayEach;

// node_modules/lodash-es/_baseFindIndex.js
function baseFindIndex(array, predicate, fromIndex, fromRight) {
  var length = array.length, index = fromIndex + (fromRight ? 1 : -1);
  while (fromRight ? index-- : ++index < length) {
    if (predicate(array[index], index, array)) {
      return index;
    }
  }
  return -1;
}
var baseFindIndex_default = baseFindIndex;

// node_modules/lodash-es/_baseIsNaN.js
function baseIsNaN(value2) {
  return value2 !== value2;
}
var baseIsNaN_default = baseIsNaN;

// node_modules/lodash-es/_strictIndexOf.js
function strictIndexOf(array, value2, fromIndex) {
  var index = fromIndex - 1, length = array.length;
  while (++index < length) {
    if (array[index] === value2) {
      return index;
    }
  }
  return -1;
}
var strictIndexOf_default = strictIndexOf;

// node_modules/lodash-es/_baseIndexOf.js
function baseIndexOf(array, value2, fromIndex) {
  return value2 === value2 ? strictIndexOf_default(array, value2, fromIndex) : baseFindIndex_default(array, baseIsNaN_default, fromIndex);
}
var baseIndexOf_default = baseIndexOf;

// node_modules/lodash-es/_arrayIncludes.js
function arrayIncludes(array, value2) {
  var length = array == null ? 0 : array.length;
  return !!length && baseIndexOf_default(array, value2, 0) > -1;
}
var arrayIncludes_default = arrayIncludes;

// node_modules/lodash-es/_isIndex.js
var MAX_SAFE_INTEGER = 9007199254740991;
var reIsUint = /^(?:0|[1-9]\d*)$/;
function isIndex(value2, length) {
  var type = typeof value2;
  length = length == null ? MAX_SAFE_INTEGER : length;
  return !!length && (type == "number" || type != "symbol" && reIsUint.test(value2)) && (value2 > -1 && value2 % 1 == 0 && value2 < length);
}
var isIndex_default = isIndex;

// node_modules/lodash-es/_baseAssignValue.js
function baseAssignValue(object, key, value2) {
  if (key == "__proto__" && defineProperty_default) {
    defineProperty_default(object, key, {
      "configurable": true,
      "enumerable": true,
      "value": value2,
      "writable": true
    });
  } else {
    object[key] = value2;
  }
}
var baseAssignValue_default = baseAssignValue;

// node_modules/lodash-es/eq.js
function eq(value2, other) {
  return value2 === other || value2 !== value2 && other !== other;
}
var eq_default = eq;

// node_modules/lodash-es/_assignValue.js
var objectProto4 = Object.prototype;
var hasOwnProperty3 = objectProto4.hasOwnProperty;
function assignValue(object, key, value2) {
  var objValue = object[key];
  if (!(hasOwnProperty3.call(object, key) && eq_default(objValue, value2)) || value2 === void 0 && !(key in object)) {
    baseAssignValue_default(object, key, value2);
  }
}
var assignValue_default = assignValue;

// node_modules/lodash-es/_copyObject.js
function copyObject(source2, props, object, customizer) {
  var isNew = !object;
  object || (object = {});
  var index = -1, length = props.length;
  while (++index < length) {
    var key = props[index];
    var newValue = customizer ? customizer(object[key], source2[key], key, object, source2) : void 0;
    if (newValue === void 0) {
      newValue = source2[key];
    }
    if (isNew) {
      baseAssignValue_default(object, key, newValue);
    } else {
      assignValue_default(object, key, newValue);
    }
  }
  return object;
}
var copyObject_default = copyObject;

// node_modules/lodash-es/_overRest.js
var nativeMax = Math.max;
function overRest(func, start, transform) {
  start = nativeMax(start === void 0 ? func.length - 1 : start, 0);
  return function() {
    var args = arguments, index = -1, length = nativeMax(args.length - start, 0), array = Array(length);
    while (++index < length) {
      array[index] = args[start + index];
    }
    index = -1;
    var otherArgs = Array(start + 1);
    while (++index < start) {
      otherArgs[index] = args[index];
    }
    otherArgs[start] = transform(array);
    return apply_default(func, this, otherArgs);
  };
}
var overRest_default = overRest;

// node_modules/lodash-es/_baseRest.js
function baseRest(func, start) {
  return setToString_default(overRest_default(func, start, identity_default), func + "");
}
var baseRest_default = baseRest;

// node_modules/lodash-es/isLength.js
var MAX_SAFE_INTEGER2 = 9007199254740991;
function isLength(value2) {
  return typeof value2 == "number" && value2 > -1 && value2 % 1 == 0 && value2 <= MAX_SAFE_INTEGER2;
}
var isLength_default = isLength;

// node_modules/lodash-es/isArrayLike.js
function isArrayLike(value2) {
  return value2 != null && isLength_default(value2.length) && !isFunction_default(value2);
}
var isArrayLike_default = isArrayLike;

// node_modules/lodash-es/_isIterateeCall.js
function isIterateeCall(value2, index, object) {
  if (!isObject_default(object)) {
    return false;
  }
  var type = typeof index;
  if (type == "number" ? isArrayLike_default(object) && isIndex_default(index, object.length) : type == "string" && index in object) {
    return eq_default(object[index], value2);
  }
  return false;
}
var isIterateeCall_default = isIterateeCall;

// node_modules/lodash-es/_createAssigner.js
function createAssigner(assigner) {
  return baseRest_default(function(object, sources2) {
    var index = -1, length = sources2.length, customizer = length > 1 ? sources2[length - 1] : void 0, guard = length > 2 ? sources2[2] : void 0;
    customizer = assigner.length > 3 && typeof customizer == "function" ? (length--, customizer) : void 0;
    if (guard && isIterateeCall_default(sources2[0], sources2[1], guard)) {
      customizer = length < 3 ? void 0 : customizer;
      length = 1;
    }
    object = Object(object);
    while (++index < length) {
      var source2 = sources2[index];
      if (source2) {
        assigner(object, source2, index, customizer);
      }
    }
    return object;
  });
}
var createAssigner_default = createAssigner;

// node_modules/lodash-es/_isPrototype.js
var objectProto5 = Object.prototype;
function isPrototype(value2) {
  var Ctor = value2 && value2.constructor, proto = typeof Ctor == "function" && Ctor.prototype || objectProto5;
  return value2 === proto;
}
var isPrototype_default = isPrototype;

// node_modules/lodash-es/_baseTimes.js
function baseTimes(n, iteratee) {
  var index = -1, result = Array(n);
  while (++index < n) {
    result[index] = iteratee(index);
  }
  return result;
}
var baseTimes_default = baseTimes;

// node_modules/lodash-es/_baseIsArguments.js
var argsTag = "[object Arguments]";
function baseIsArguments(value2) {
  return isObjectLike_default(value2) && baseGetTag_default(value2) == argsTag;
}
var baseIsArguments_default = baseIsArguments;

// node_modules/lodash-es/isArguments.js
var objectProto6 = Object.prototype;
var hasOwnProperty4 = objectProto6.hasOwnProperty;
var propertyIsEnumerable = objectProto6.propertyIsEnumerable;
var isArguments = baseIsArguments_default(/* @__PURE__ */ (function() {
  return arguments;
})()) ? baseIsArguments_default : function(value2) {
  return isObjectLike_default(value2) && hasOwnProperty4.call(value2, "callee") && !propertyIsEnumerable.call(value2, "callee");
};
var isArguments_default = isArguments;

// node_modules/lodash-es/stubFalse.js
function stubFalse() {
  return false;
}
var stubFalse_default = stubFalse;

// node_modules/lodash-es/isBuffer.js
var freeExports = typeof exports == "object" && exports && !exports.nodeType && exports;
var freeModule = freeExports && typeof module == "object" && module && !module.nodeType && module;
var moduleExports = freeModule && freeModule.exports === freeExports;
var Buffer = moduleExports ? root_default.Buffer : void 0;
var nativeIsBuffer = Buffer ? Buffer.isBuffer : void 0;
var isBuffer = nativeIsBuffer || stubFalse_default;
var isBuffer_default = isBuffer;

// node_modules/lodash-es/_baseIsTypedArray.js
var argsTag2 = "[object Arguments]";
var arrayTag = "[object Array]";
var boolTag = "[object Boolean]";
var dateTag = "[object Date]";
var errorTag = "[object Error]";
var funcTag2 = "[object Function]";
var mapTag = "[object Map]";
var numberTag = "[object Number]";
var objectTag = "[object Object]";
var regexpTag = "[object RegExp]";
var setTag = "[object Set]";
var stringTag = "[object String]";
var weakMapTag = "[object WeakMap]";
var arrayBufferTag = "[object ArrayBuffer]";
var dataViewTag = "[object DataView]";
var float32Tag = "[object Float32Array]";
var float64Tag = "[object Float64Array]";
var int8Tag = "[object Int8Array]";
var int16Tag = "[object Int16Array]";
var int32Tag = "[object Int32Array]";
var uint8Tag = "[object Uint8Array]";
var uint8ClampedTag = "[object Uint8ClampedArray]";
var uint16Tag = "[object Uint16Array]";
var uint32Tag = "[object Uint32Array]";
var typedArrayTags = {};
typedArrayTags[float32Tag] = typedArrayTags[float64Tag] = typedArrayTags[int8Tag] = typedArrayTags[int16Tag] = typedArrayTags[int32Tag] = typedArrayTags[uint8Tag] = typedArrayTags[uint8ClampedTag] = typedArrayTags[uint16Tag] = typedArrayTags[uint32Tag] = true;
typedArrayTags[argsTag2] = typedArrayTags[arrayTag] = typedArrayTags[arrayBufferTag] = typedArrayTags[boolTag] = typedArrayTags[dataViewTag] = typedArrayTags[dateTag] = typedArrayTags[errorTag] = typedArrayTags[funcTag2] = typedArrayTags[mapTag] = typedArrayTags[numberTag] = typedArrayTags[objectTag] = typedArrayTags[regexpTag] = typedArrayTags[setTag] = typedArrayTags[stringTag] = typedArrayTags[weakMapTag] = false;
function baseIsTypedArray(value2) {
  return isObjectLike_default(value2) && isLength_default(value2.length) && !!typedArrayTags[baseGetTag_default(value2)];
}
var baseIsTypedArray_default = baseIsTypedArray;

// node_modules/lodash-es/_baseUnary.js
function baseUnary(func) {
  return function(value2) {
    return func(value2);
  };
}
var baseUnary_default = baseUnary;

// node_modules/lodash-es/_nodeUtil.js
var freeExports2 = typeof exports == "object" && exports && !exports.nodeType && exports;
var freeModule2 = freeExports2 && typeof module == "object" && module && !module.nodeType && module;
var moduleExports2 = freeModule2 && freeModule2.exports === freeExports2;
var freeProcess = moduleExports2 && freeGlobal_default.process;
var nodeUtil = (function() {
  try {
    var types = freeModule2 && freeModule2.require && freeModule2.require("util").types;
    if (types) {
      return types;
    }
    return freeProcess && freeProcess.binding && freeProcess.binding("util");
  } catch (e) {
  }
})();
var nodeUtil_default = nodeUtil;

// node_modules/lodash-es/isTypedArray.js
var nodeIsTypedArray = nodeUtil_default && nodeUtil_default.isTypedArray;
var isTypedArray = nodeIsTypedArray ? baseUnary_default(nodeIsTypedArray) : baseIsTypedArray_default;
var isTypedArray_default = isTypedArray;

// node_modules/lodash-es/_arrayLikeKeys.js
var objectProto7 = Object.prototype;
var hasOwnProperty5 = objectProto7.hasOwnProperty;
function arrayLikeKeys(value2, inherited) {
  var isArr = isArray_default(value2), isArg = !isArr && isArguments_default(value2), isBuff = !isArr && !isArg && isBuffer_default(value2), isType = !isArr && !isArg && !isBuff && isTypedArray_default(value2), skipIndexes = isArr || isArg || isBuff || isType, result = skipIndexes ? baseTimes_default(value2.length, String) : [], length = result.length;
  for (var key in value2) {
    if ((inherited || hasOwnProperty5.call(value2, key)) && !(skipIndexes && // Safari 9 has enumerable `arguments.length` in strict mode.
    (key == "length" || // Node.js 0.10 has enumerable non-index properties on buffers.
    isBuff && (key == "offset" || key == "parent") || // PhantomJS 2 has enumerable non-index properties on typed arrays.
    isType && (key == "buffer" || key == "byteLength" || key == "byteOffset") || // Skip index properties.
    isIndex_default(key, length)))) {
      result.push(key);
    }
  }
  return result;
}
var arrayLikeKeys_default = arrayLikeKeys;

// node_modules/lodash-es/_overArg.js
function overArg(func, transform) {
  return function(arg) {
    return func(transform(arg));
  };
}
var overArg_default = overArg;

// node_modules/lodash-es/_nativeKeys.js
var nativeKeys = overArg_default(Object.keys, Object);
var nativeKeys_default = nativeKeys;

// node_modules/lodash-es/_baseKeys.js
var objectProto8 = Object.prototype;
var hasOwnProperty6 = objectProto8.hasOwnProperty;
function baseKeys(object) {
  if (!isPrototype_default(object)) {
    return nativeKeys_default(object);
  }
  var result = [];
  for (var key in Object(object)) {
    if (hasOwnProperty6.call(object, key) && key != "constructor") {
      result.push(key);
    }
  }
  return result;
}
var baseKeys_default = baseKeys;

// node_modules/lodash-es/keys.js
function keys(object) {
  return isArrayLike_default(object) ? arrayLikeKeys_default(object) : baseKeys_default(object);
}
var keys_default = keys;

// node_modules/lodash-es/assign.js
var objectProto9 = Object.prototype;
var hasOwnProperty7 = objectProto9.hasOwnProperty;
var assign = createAssigner_default(function(object, source2) {
  if (isPrototype_default(source2) || isArrayLike_default(source2)) {
    copyObject_default(source2, keys_default(source2), object);
    return;
  }
  for (var key in source2) {
    if (hasOwnProperty7.call(source2, key)) {
      assignValue_default(object, key, source2[key]);
    }
  }
});
var assign_default = assign;

// node_modules/lodash-es/_nativeKeysIn.js
function nativeKeysIn(object) {
  var result = [];
  if (object != null) {
    for (var key in Object(object)) {
      result.push(key);
    }
  }
  return result;
}
var nativeKeysIn_default = nativeKeysIn;

// node_modules/lodash-es/_baseKeysIn.js
var objectProto10 = Object.prototype;
var hasOwnProperty8 = objectProto10.hasOwnProperty;
function baseKeysIn(object) {
  if (!isObject_default(object)) {
    return nativeKeysIn_default(object);
  }
  var isProto = isPrototype_default(object), result = [];
  for (var key in object) {
    if (!(key == "constructor" && (isProto || !hasOwnProperty8.call(object, key)))) {
      result.push(key);
    }
  }
  return result;
}
var baseKeysIn_default = baseKeysIn;

// node_modules/lodash-es/keysIn.js
function keysIn(object) {
  return isArrayLike_default(object) ? arrayLikeKeys_default(object, true) : baseKeysIn_default(object);
}
var keysIn_default = keysIn;

// node_modules/lodash-es/_isKey.js
var reIsDeepProp = /\.|\[(?:[^[\]]*|(["'])(?:(?!\1)[^\\]|\\.)*?\1)\]/;
var reIsPlainProp = /^\w*$/;
function isKey(value2, object) {
  if (isArray_default(value2)) {
    return false;
  }
  var type = typeof value2;
  if (type == "number" || type == "symbol" || type == "boolean" || value2 == null || isSymbol_default(value2)) {
    return true;
  }
  return reIsPlainProp.test(value2) || !reIsDeepProp.test(value2) || object != null && value2 in Object(object);
}
var isKey_default = isKey;

// node_modules/lodash-es/_nativeCreate.js
var nativeCreate = getNative_default(Object, "create");
var nativeCreate_default = nativeCreate;

// node_modules/lodash-es/_hashClear.js
function hashClear() {
  this.__data__ = nativeCreate_default ? nativeCreate_default(null) : {};
  this.size = 0;
}
var hashClear_default = hashClear;

// node_modules/lodash-es/_hashDelete.js
function hashDelete(key) {
  var result = this.has(key) && delete this.__data__[key];
  this.size -= result ? 1 : 0;
  return result;
}
var hashDelete_default = hashDelete;

// node_modules/lodash-es/_hashGet.js
var HASH_UNDEFINED = "__lodash_hash_undefined__";
var objectProto11 = Object.prototype;
var hasOwnProperty9 = objectProto11.hasOwnProperty;
function hashGet(key) {
  var data = this.__data__;
  if (nativeCreate_default) {
    var result = data[key];
    return result === HASH_UNDEFINED ? void 0 : result;
  }
  return hasOwnProperty9.call(data, key) ? data[key] : void 0;
}
var hashGet_default = hashGet;

// node_modules/lodash-es/_hashHas.js
var objectProto12 = Object.prototype;
var hasOwnProperty10 = objectProto12.hasOwnProperty;
function hashHas(key) {
  var data = this.__data__;
  return nativeCreate_default ? data[key] !== void 0 : hasOwnProperty10.call(data, key);
}
var hashHas_default = hashHas;

// node_modules/lodash-es/_hashSet.js
var HASH_UNDEFINED2 = "__lodash_hash_undefined__";
function hashSet(key, value2) {
  var data = this.__data__;
  this.size += this.has(key) ? 0 : 1;
  data[key] = nativeCreate_default && value2 === void 0 ? HASH_UNDEFINED2 : value2;
  return this;
}
var hashSet_default = hashSet;

// node_modules/lodash-es/_Hash.js
function Hash(entries2) {
  var index = -1, length = entries2 == null ? 0 : entries2.length;
  this.clear();
  while (++index < length) {
    var entry = entries2[index];
    this.set(entry[0], entry[1]);
  }
}
Hash.prototype.clear = hashClear_default;
Hash.prototype["delete"] = hashDelete_default;
Hash.prototype.get = hashGet_default;
Hash.prototype.has = hashHas_default;
Hash.prototype.set = hashSet_default;
var Hash_default = Hash;

// node_modules/lodash-es/_listCacheClear.js
function listCacheClear() {
  this.__data__ = [];
  this.size = 0;
}
var listCacheClear_default = listCacheClear;

// node_modules/lodash-es/_assocIndexOf.js
function assocIndexOf(array, key) {
  var length = array.length;
  while (length--) {
    if (eq_default(array[length][0], key)) {
      return length;
    }
  }
  return -1;
}
var assocIndexOf_default = assocIndexOf;

// node_modules/lodash-es/_listCacheDelete.js
var arrayProto = Array.prototype;
var splice = arrayProto.splice;
function listCacheDelete(key) {
  var data = this.__data__, index = assocIndexOf_default(data, key);
  if (index < 0) {
    return false;
  }
  var lastIndex = data.length - 1;
  if (index == lastIndex) {
    data.pop();
  } else {
    splice.call(data, index, 1);
  }
  --this.size;
  return true;
}
var listCacheDelete_default = listCacheDelete;

// node_modules/lodash-es/_listCacheGet.js
function listCacheGet(key) {
  var data = this.__data__, index = assocIndexOf_default(data, key);
  return index < 0 ? void 0 : data[index][1];
}
var listCacheGet_default = listCacheGet;

// node_modules/lodash-es/_listCacheHas.js
function listCacheHas(key) {
  return assocIndexOf_default(this.__data__, key) > -1;
}
var listCacheHas_default = listCacheHas;

// node_modules/lodash-es/_listCacheSet.js
function listCacheSet(key, value2) {
  var data = this.__data__, index = assocIndexOf_default(data, key);
  if (index < 0) {
    ++this.size;
    data.push([key, value2]);
  } else {
    data[index][1] = value2;
  }
  return this;
}
var listCacheSet_default = listCacheSet;

// node_modules/lodash-es/_ListCache.js
function ListCache(entries2) {
  var index = -1, length = entries2 == null ? 0 : entries2.length;
  this.clear();
  while (++index < length) {
    var entry = entries2[index];
    this.set(entry[0], entry[1]);
  }
}
ListCache.prototype.clear = listCacheClear_default;
ListCache.prototype["delete"] = listCacheDelete_default;
ListCache.prototype.get = listCacheGet_default;
ListCache.prototype.has = listCacheHas_default;
ListCache.prototype.set = listCacheSet_default;
var ListCache_default = ListCache;

// node_modules/lodash-es/_Map.js
var Map2 = getNative_default(root_default, "Map");
var Map_default = Map2;

// node_modules/lodash-es/_mapCacheClear.js
function mapCacheClear() {
  this.size = 0;
  this.__data__ = {
    "hash": new Hash_default(),
    "map": new (Map_default || ListCache_default)(),
    "string": new Hash_default()
  };
}
var mapCacheClear_default = mapCacheClear;

// node_modules/lodash-es/_isKeyable.js
function isKeyable(value2) {
  var type = typeof value2;
  return type == "string" || type == "number" || type == "symbol" || type == "boolean" ? value2 !== "__proto__" : value2 === null;
}
var isKeyable_default = isKeyable;

// node_modules/lodash-es/_getMapData.js
function getMapData(map2, key) {
  var data = map2.__data__;
  return isKeyable_default(key) ? data[typeof key == "string" ? "string" : "hash"] : data.map;
}
var getMapData_default = getMapData;

// node_modules/lodash-es/_mapCacheDelete.js
function mapCacheDelete(key) {
  var result = getMapData_default(this, key)["delete"](key);
  this.size -= result ? 1 : 0;
  return result;
}
var mapCacheDelete_default = mapCacheDelete;

// node_modules/lodash-es/_mapCacheGet.js
function mapCacheGet(key) {
  return getMapData_default(this, key).get(key);
}
var mapCacheGet_default = mapCacheGet;

// node_modules/lodash-es/_mapCacheHas.js
function mapCacheHas(key) {
  return getMapData_default(this, key).has(key);
}
var mapCacheHas_default = mapCacheHas;

// node_modules/lodash-es/_mapCacheSet.js
function mapCacheSet(key, value2) {
  var data = getMapData_default(this, key), size = data.size;
  data.set(key, value2);
  this.size += data.size == size ? 0 : 1;
  return this;
}
var mapCacheSet_default = mapCacheSet;

// node_modules/lodash-es/_MapCache.js
function MapCache(entries2) {
  var index = -1, length = entries2 == null ? 0 : entries2.length;
  this.clear();
  while (++index < length) {
    var entry = entries2[index];
    this.set(entry[0], entry[1]);
  }
}
MapCache.prototype.clear = mapCacheClear_default;
MapCache.prototype["delete"] = mapCacheDelete_default;
MapCache.prototype.get = mapCacheGet_default;
MapCache.prototype.has = mapCacheHas_default;
MapCache.prototype.set = mapCacheSet_default;
var MapCache_default = MapCache;

// node_modules/lodash-es/memoize.js
var FUNC_ERROR_TEXT = "Expected a function";
function memoize(func, resolver) {
  if (typeof func != "function" || resolver != null && typeof resolver != "function") {
    throw new TypeError(FUNC_ERROR_TEXT);
  }
  var memoized = function() {
    var args = arguments, key = resolver ? resolver.apply(this, args) : args[0], cache = memoized.cache;
    if (cache.has(key)) {
      return cache.get(key);
    }
    var result = func.apply(this, args);
    memoized.cache = cache.set(key, result) || cache;
    return result;
  };
  memoized.cache = new (memoize.Cache || MapCache_default)();
  return memoized;
}
memoize.Cache = MapCache_default;
var memoize_default = memoize;

// node_modules/lodash-es/_memoizeCapped.js
var MAX_MEMOIZE_SIZE = 500;
function memoizeCapped(func) {
  var result = memoize_default(func, function(key) {
    if (cache.size === MAX_MEMOIZE_SIZE) {
      cache.clear();
    }
    return key;
  });
  var cache = result.cache;
  return result;
}
var memoizeCapped_default = memoizeCapped;

// node_modules/lodash-es/_stringToPath.js
var rePropName = /[^.[\]]+|\[(?:(-?\d+(?:\.\d+)?)|(["'])((?:(?!\2)[^\\]|\\.)*?)\2)\]|(?=(?:\.|\[\])(?:\.|\[\]|$))/g;
var reEscapeChar = /\\(\\)?/g;
var stringToPath = memoizeCapped_default(function(string3) {
  var result = [];
  if (string3.charCodeAt(0) === 46) {
    result.push("");
  }
  string3.replace(rePropName, function(match, number, quote, subString) {
    result.push(quote ? subString.replace(reEscapeChar, "$1") : number || match);
  });
  return result;
});
var stringToPath_default = stringToPath;

// node_modules/lodash-es/toString.js
function toString(value2) {
  return value2 == null ? "" : baseToString_default(value2);
}
var toString_default = toString;

// node_modules/lodash-es/_castPath.js
function castPath(value2, object) {
  if (isArray_default(value2)) {
    return value2;
  }
  return isKey_default(value2, object) ? [value2] : stringToPath_default(toString_default(value2));
}
var castPath_default = castPath;

// node_modules/lodash-es/_toKey.js
var INFINITY3 = 1 / 0;
function toKey(value2) {
  if (typeof value2 == "string" || isSymbol_default(value2)) {
    return value2;
  }
  var result = value2 + "";
  return result == "0" && 1 / value2 == -INFINITY3 ? "-0" : result;
}
var toKey_default = toKey;

// node_modules/lodash-es/_baseGet.js
function baseGet(object, path) {
  path = castPath_default(path, object);
  var index = 0, length = path.length;
  while (object != null && index < length) {
    object = object[toKey_default(path[index++])];
  }
  return index && index == length ? object : void 0;
}
var baseGet_default = baseGet;

// node_modules/lodash-es/get.js
function get(object, path, defaultValue) {
  var result = object == null ? void 0 : baseGet_default(object, path);
  return result === void 0 ? defaultValue : result;
}
var get_default = get;

// node_modules/lodash-es/_arrayPush.js
function arrayPush(array, values2) {
  var index = -1, length = values2.length, offset = array.length;
  while (++index < length) {
    array[offset + index] = values2[index];
  }
  return array;
}
var arrayPush_default = arrayPush;

// node_modules/lodash-es/_isFlattenable.js
var spreadableSymbol = Symbol_default ? Symbol_default.isConcatSpreadable : void 0;
function isFlattenable(value2) {
  return isArray_default(value2) || isArguments_default(value2) || !!(spreadableSymbol && value2 && value2[spreadableSymbol]);
}
var isFlattenable_default = isFlattenable;

// node_modules/lodash-es/_baseFlatten.js
function baseFlatten(array, depth, predicate, isStrict, result) {
  var index = -1, length = array.length;
  predicate || (predicate = isFlattenable_default);
  result || (result = []);
  while (++index < length) {
    var value2 = array[index];
    if (depth > 0 && predicate(value2)) {
      if (depth > 1) {
        baseFlatten(value2, depth - 1, predicate, isStrict, result);
      } else {
        arrayPush_default(result, value2);
      }
    } else if (!isStrict) {
      result[result.length] = value2;
    }
  }
  return result;
}
var baseFlatten_default = baseFlatten;

// node_modules/lodash-es/flatten.js
function flatten(array) {
  var length = array == null ? 0 : array.length;
  return length ? baseFlatten_default(array, 1) : [];
}
var flatten_default = flatten;

// node_modules/lodash-es/_getPrototype.js
var getPrototype = overArg_default(Object.getPrototypeOf, Object);
var getPrototype_default = getPrototype;

// node_modules/lodash-es/_baseSlice.js
function baseSlice(array, start, end) {
  var index = -1, length = array.length;
  if (start < 0) {
    start = -start > length ? 0 : length + start;
  }
  end = end > length ? length : end;
  if (end < 0) {
    end += length;
  }
  length = start > end ? 0 : end - start >>> 0;
  start >>>= 0;
  var result = Array(length);
  while (++index < length) {
    result[index] = array[index + start];
  }
  return result;
}
var baseSlice_default = baseSlice;

// node_modules/lodash-es/_arrayReduce.js
function arrayReduce(array, iteratee, accumulator, initAccum) {
  var index = -1, length = array == null ? 0 : array.length;
  if (initAccum && length) {
    accumulator = array[++index];
  }
  while (++index < length) {
    accumulator = iteratee(accumulator, array[index], index, array);
  }
  return accumulator;
}
var arrayReduce_default = arrayReduce;

// node_modules/lodash-es/_stackClear.js
function stackClear() {
  this.__data__ = new ListCache_default();
  this.size = 0;
}
var stackClear_default = stackClear;

// node_modules/lodash-es/_stackDelete.js
function stackDelete(key) {
  var data = this.__data__, result = data["delete"](key);
  this.size = data.size;
  return result;
}
var stackDelete_default = stackDelete;

// node_modules/lodash-es/_stackGet.js
function stackGet(key) {
  return this.__data__.get(key);
}
var stackGet_default = stackGet;

// node_modules/lodash-es/_stackHas.js
function stackHas(key) {
  return this.__data__.has(key);
}
var stackHas_default = stackHas;

// node_modules/lodash-es/_stackSet.js
var LARGE_ARRAY_SIZE = 200;
function stackSet(key, value2) {
  var data = this.__data__;
  if (data instanceof ListCache_default) {
    var pairs = data.__data__;
    if (!Map_default || pairs.length < LARGE_ARRAY_SIZE - 1) {
      pairs.push([key, value2]);
      this.size = ++data.size;
      return this;
    }
    data = this.__data__ = new MapCache_default(pairs);
  }
  data.set(key, value2);
  this.size = data.size;
  return this;
}
var stackSet_default = stackSet;

// node_modules/lodash-es/_Stack.js
function Stack(entries2) {
  var data = this.__data__ = new ListCache_default(entries2);
  this.size = data.size;
}
Stack.prototype.clear = stackClear_default;
Stack.prototype["delete"] = stackDelete_default;
Stack.prototype.get = stackGet_default;
Stack.prototype.has = stackHas_default;
Stack.prototype.set = stackSet_default;
var Stack_default = Stack;

// node_modules/lodash-es/_baseAssign.js
function baseAssign(object, source2) {
  return object && copyObject_default(source2, keys_default(source2), object);
}
var baseAssign_default = baseAssign;

// node_modules/lodash-es/_baseAssignIn.js
function baseAssignIn(object, source2) {
  return object && copyObject_default(source2, keysIn_default(source2), object);
}
var baseAssignIn_default = baseAssignIn;

// node_modules/lodash-es/_cloneBuffer.js
var freeExports3 = typeof exports == "object" && exports && !exports.nodeType && exports;
var freeModule3 = freeExports3 && typeof module == "object" && module && !module.nodeType && module;
var moduleExports3 = freeModule3 && freeModule3.exports === freeExports3;
var Buffer2 = moduleExports3 ? root_default.Buffer : void 0;
var allocUnsafe = Buffer2 ? Buffer2.allocUnsafe : void 0;
function cloneBuffer(buffer, isDeep) {
  if (isDeep) {
    return buffer.slice();
  }
  var length = buffer.length, result = allocUnsafe ? allocUnsafe(length) : new buffer.constructor(length);
  buffer.copy(result);
  return result;
}
var cloneBuffer_default = cloneBuffer;

// node_modules/lodash-es/_arrayFilter.js
function arrayFilter(array, predicate) {
  var index = -1, length = array == null ? 0 : array.length, resIndex = 0, result = [];
  while (++index < length) {
    var value2 = array[index];
    if (predicate(value2, index, array)) {
      result[resIndex++] = value2;
    }
  }
  return result;
}
var arrayFilter_default = arrayFilter;

// node_modules/lodash-es/stubArray.js
function stubArray() {
  return [];
}
var stubArray_default = stubArray;

// node_modules/lodash-es/_getSymbols.js
var objectProto13 = Object.prototype;
var propertyIsEnumerable2 = objectProto13.propertyIsEnumerable;
var nativeGetSymbols = Object.getOwnPropertySymbols;
var getSymbols = !nativeGetSymbols ? stubArray_default : function(object) {
  if (object == null) {
    return [];
  }
  object = Object(object);
  return arrayFilter_default(nativeGetSymbols(object), function(symbol) {
    return propertyIsEnumerable2.call(object, symbol);
  });
};
var getSymbols_default = getSymbols;

// node_modules/lodash-es/_copySymbols.js
function copySymbols(source2, object) {
  return copyObject_default(source2, getSymbols_default(source2), object);
}
var copySymbols_default = copySymbols;

// node_modules/lodash-es/_getSymbolsIn.js
var nativeGetSymbols2 = Object.getOwnPropertySymbols;
var getSymbolsIn = !nativeGetSymbols2 ? stubArray_default : function(object) {
  var result = [];
  while (object) {
    arrayPush_default(result, getSymbols_default(object));
    object = getPrototype_default(object);
  }
  return result;
};
var getSymbolsIn_default = getSymbolsIn;

// node_modules/lodash-es/_copySymbolsIn.js
function copySymbolsIn(source2, object) {
  return copyObject_default(source2, getSymbolsIn_default(source2), object);
}
var copySymbolsIn_default = copySymbolsIn;

// node_modules/lodash-es/_baseGetAllKeys.js
function baseGetAllKeys(object, keysFunc, symbolsFunc) {
  var result = keysFunc(object);
  return isArray_default(object) ? result : arrayPush_default(result, symbolsFunc(object));
}
var baseGetAllKeys_default = baseGetAllKeys;

// node_modules/lodash-es/_getAllKeys.js
function getAllKeys(object) {
  return baseGetAllKeys_default(object, keys_default, getSymbols_default);
}
var getAllKeys_default = getAllKeys;

// node_modules/lodash-es/_getAllKeysIn.js
function getAllKeysIn(object) {
  return baseGetAllKeys_default(object, keysIn_default, getSymbolsIn_default);
}
var getAllKeysIn_default = getAllKeysIn;

// node_modules/lodash-es/_DataView.js
var DataView = getNative_default(root_default, "DataView");
var DataView_default = DataView;

// node_modules/lodash-es/_Promise.js
var Promise2 = getNative_default(root_default, "Promise");
var Promise_default = Promise2;

// node_modules/lodash-es/_Set.js
var Set2 = getNative_default(root_default, "Set");
var Set_default = Set2;

// node_modules/lodash-es/_getTag.js
var mapTag2 = "[object Map]";
var objectTag2 = "[object Object]";
var promiseTag = "[object Promise]";
var setTag2 = "[object Set]";
var weakMapTag2 = "[object WeakMap]";
var dataViewTag2 = "[object DataView]";
var dataViewCtorString = toSource_default(DataView_default);
var mapCtorString = toSource_default(Map_default);
var promiseCtorString = toSource_default(Promise_default);
var setCtorString = toSource_default(Set_default);
var weakMapCtorString = toSource_default(WeakMap_default);
var getTag = baseGetTag_default;
if (DataView_default && getTag(new DataView_default(new ArrayBuffer(1))) != dataViewTag2 || Map_default && getTag(new Map_default()) != mapTag2 || Promise_default && getTag(Promise_default.resolve()) != promiseTag || Set_default && getTag(new Set_default()) != setTag2 || WeakMap_default && getTag(new WeakMap_default()) != weakMapTag2) {
  getTag = function(value2) {
    var result = baseGetTag_default(value2), Ctor = result == objectTag2 ? value2.constructor : void 0, ctorString = Ctor ? toSource_default(Ctor) : "";
    if (ctorString) {
      switch (ctorString) {
        case dataViewCtorString:
          return dataViewTag2;
        case mapCtorString:
          return mapTag2;
        case promiseCtorString:
          return promiseTag;
        case setCtorString:
          return setTag2;
        case weakMapCtorString:
          return weakMapTag2;
      }
    }
    return result;
  };
}
var getTag_default = getTag;

// node_modules/lodash-es/_initCloneArray.js
var objectProto14 = Object.prototype;
var hasOwnProperty11 = objectProto14.hasOwnProperty;
function initCloneArray(array) {
  var length = array.length, result = new array.constructor(length);
  if (length && typeof array[0] == "string" && hasOwnProperty11.call(array, "index")) {
    result.index = array.index;
    result.input = array.input;
  }
  return result;
}
var initCloneArray_default = initCloneArray;

// node_modules/lodash-es/_Uint8Array.js
var Uint8Array = root_default.Uint8Array;
var Uint8Array_default = Uint8Array;

// node_modules/lodash-es/_cloneArrayBuffer.js
function cloneArrayBuffer(arrayBuffer) {
  var result = new arrayBuffer.constructor(arrayBuffer.byteLength);
  new Uint8Array_default(result).set(new Uint8Array_default(arrayBuffer));
  return result;
}
var cloneArrayBuffer_default = cloneArrayBuffer;

// node_modules/lodash-es/_cloneDataView.js
function cloneDataView(dataView, isDeep) {
  var buffer = isDeep ? cloneArrayBuffer_default(dataView.buffer) : dataView.buffer;
  return new dataView.constructor(buffer, dataView.byteOffset, dataView.byteLength);
}
var cloneDataView_default = cloneDataView;

// node_modules/lodash-es/_cloneRegExp.js
var reFlags = /\w*$/;
function cloneRegExp(regexp) {
  var result = new regexp.constructor(regexp.source, reFlags.exec(regexp));
  result.lastIndex = regexp.lastIndex;
  return result;
}
var cloneRegExp_default = cloneRegExp;

// node_modules/lodash-es/_cloneSymbol.js
var symbolProto2 = Symbol_default ? Symbol_default.prototype : void 0;
var symbolValueOf = symbolProto2 ? symbolProto2.valueOf : void 0;
function cloneSymbol(symbol) {
  return symbolValueOf ? Object(symbolValueOf.call(symbol)) : {};
}
var cloneSymbol_default = cloneSymbol;

// node_modules/lodash-es/_cloneTypedArray.js
function cloneTypedArray(typedArray, isDeep) {
  var buffer = isDeep ? cloneArrayBuffer_default(typedArray.buffer) : typedArray.buffer;
  return new typedArray.constructor(buffer, typedArray.byteOffset, typedArray.length);
}
var cloneTypedArray_default = cloneTypedArray;

// node_modules/lodash-es/_initCloneByTag.js
var boolTag2 = "[object Boolean]";
var dateTag2 = "[object Date]";
var mapTag3 = "[object Map]";
var numberTag2 = "[object Number]";
var regexpTag2 = "[object RegExp]";
var setTag3 = "[object Set]";
var stringTag2 = "[object String]";
var symbolTag2 = "[object Symbol]";
var arrayBufferTag2 = "[object ArrayBuffer]";
var dataViewTag3 = "[object DataView]";
var float32Tag2 = "[object Float32Array]";
var float64Tag2 = "[object Float64Array]";
var int8Tag2 = "[object Int8Array]";
var int16Tag2 = "[object Int16Array]";
var int32Tag2 = "[object Int32Array]";
var uint8Tag2 = "[object Uint8Array]";
var uint8ClampedTag2 = "[object Uint8ClampedArray]";
var uint16Tag2 = "[object Uint16Array]";
var uint32Tag2 = "[object Uint32Array]";
function initCloneByTag(object, tag, isDeep) {
  var Ctor = object.constructor;
  switch (tag) {
    case arrayBufferTag2:
      return cloneArrayBuffer_default(object);
    case boolTag2:
    case dateTag2:
      return new Ctor(+object);
    case dataViewTag3:
      return cloneDataView_default(object, isDeep);
    case float32Tag2:
    case float64Tag2:
    case int8Tag2:
    case int16Tag2:
    case int32Tag2:
    case uint8Tag2:
    case uint8ClampedTag2:
    case uint16Tag2:
    case uint32Tag2:
      return cloneTypedArray_default(object, isDeep);
    case mapTag3:
      return new Ctor();
    case numberTag2:
    case stringTag2:
      return new Ctor(object);
    case regexpTag2:
      return cloneRegExp_default(object);
    case setTag3:
      return new Ctor();
    case symbolTag2:
      return cloneSymbol_default(object);
  }
}
var initCloneByTag_default = initCloneByTag;

// node_modules/lodash-es/_initCloneObject.js
function initCloneObject(object) {
  return typeof object.constructor == "function" && !isPrototype_default(object) ? baseCreate_default(getPrototype_default(object)) : {};
}
var initCloneObject_default = initCloneObject;

// node_modules/lodash-es/_baseIsMap.js
var mapTag4 = "[object Map]";
function baseIsMap(value2) {
  return isObjectLike_default(value2) && getTag_default(value2) == mapTag4;
}
var baseIsMap_default = baseIsMap;

// node_modules/lodash-es/isMap.js
var nodeIsMap = nodeUtil_default && nodeUtil_default.isMap;
var isMap = nodeIsMap ? baseUnary_default(nodeIsMap) : baseIsMap_default;
var isMap_default = isMap;

// node_modules/lodash-es/_baseIsSet.js
var setTag4 = "[object Set]";
function baseIsSet(value2) {
  return isObjectLike_default(value2) && getTag_default(value2) == setTag4;
}
var baseIsSet_default = baseIsSet;

// node_modules/lodash-es/isSet.js
var nodeIsSet = nodeUtil_default && nodeUtil_default.isSet;
var isSet = nodeIsSet ? baseUnary_default(nodeIsSet) : baseIsSet_default;
var isSet_default = isSet;

// node_modules/lodash-es/_baseClone.js
var CLONE_DEEP_FLAG = 1;
var CLONE_FLAT_FLAG = 2;
var CLONE_SYMBOLS_FLAG = 4;
var argsTag3 = "[object Arguments]";
var arrayTag2 = "[object Array]";
var boolTag3 = "[object Boolean]";
var dateTag3 = "[object Date]";
var errorTag2 = "[object Error]";
var funcTag3 = "[object Function]";
var genTag2 = "[object GeneratorFunction]";
var mapTag5 = "[object Map]";
var numberTag3 = "[object Number]";
var objectTag3 = "[object Object]";
var regexpTag3 = "[object RegExp]";
var setTag5 = "[object Set]";
var stringTag3 = "[object String]";
var symbolTag3 = "[object Symbol]";
var weakMapTag3 = "[object WeakMap]";
var arrayBufferTag3 = "[object ArrayBuffer]";
var dataViewTag4 = "[object DataView]";
var float32Tag3 = "[object Float32Array]";
var float64Tag3 = "[object Float64Array]";
var int8Tag3 = "[object Int8Array]";
var int16Tag3 = "[object Int16Array]";
var int32Tag3 = "[object Int32Array]";
var uint8Tag3 = "[object Uint8Array]";
var uint8ClampedTag3 = "[object Uint8ClampedArray]";
var uint16Tag3 = "[object Uint16Array]";
var uint32Tag3 = "[object Uint32Array]";
var cloneableTags = {};
cloneableTags[argsTag3] = cloneableTags[arrayTag2] = cloneableTags[arrayBufferTag3] = cloneableTags[dataViewTag4] = cloneableTags[boolTag3] = cloneableTags[dateTag3] = cloneableTags[float32Tag3] = cloneableTags[float64Tag3] = cloneableTags[int8Tag3] = cloneableTags[int16Tag3] = cloneableTags[int32Tag3] = cloneableTags[mapTag5] = cloneableTags[numberTag3] = cloneableTags[objectTag3] = cloneableTags[regexpTag3] = cloneableTags[setTag5] = cloneableTags[stringTag3] = cloneableTags[symbolTag3] = cloneableTags[uint8Tag3] = cloneableTags[uint8ClampedTag3] = cloneableTags[uint16Tag3] = cloneableTags[uint32Tag3] = true;
cloneableTags[errorTag2] = cloneableTags[funcTag3] = cloneableTags[weakMapTag3] = false;
function baseClone(value2, bitmask, customizer, key, object, stack) {
  var result, isDeep = bitmask & CLONE_DEEP_FLAG, isFlat = bitmask & CLONE_FLAT_FLAG, isFull = bitmask & CLONE_SYMBOLS_FLAG;
  if (customizer) {
    result = object ? customizer(value2, key, object, stack) : customizer(value2);
  }
  if (result !== void 0) {
    return result;
  }
  if (!isObject_default(value2)) {
    return value2;
  }
  var isArr = isArray_default(value2);
  if (isArr) {
    result = initCloneArray_default(value2);
    if (!isDeep) {
      return copyArray_default(value2, result);
    }
  } else {
    var tag = getTag_default(value2), isFunc = tag == funcTag3 || tag == genTag2;
    if (isBuffer_default(value2)) {
      return cloneBuffer_default(value2, isDeep);
    }
    if (tag == objectTag3 || tag == argsTag3 || isFunc && !object) {
      result = isFlat || isFunc ? {} : initCloneObject_default(value2);
      if (!isDeep) {
        return isFlat ? copySymbolsIn_default(value2, baseAssignIn_default(result, value2)) : copySymbols_default(value2, baseAssign_default(result, value2));
      }
    } else {
      if (!cloneableTags[tag]) {
        return object ? value2 : {};
      }
      result = initCloneByTag_default(value2, tag, isDeep);
    }
  }
  stack || (stack = new Stack_default());
  var stacked = stack.get(value2);
  if (stacked) {
    return stacked;
  }
  stack.set(value2, result);
  if (isSet_default(value2)) {
    value2.forEach(function(subValue) {
      result.add(baseClone(subValue, bitmask, customizer, subValue, value2, stack));
    });
  } else if (isMap_default(value2)) {
    value2.forEach(function(subValue, key2) {
      result.set(key2, baseClone(subValue, bitmask, customizer, key2, value2, stack));
    });
  }
  var keysFunc = isFull ? isFlat ? getAllKeysIn_default : getAllKeys_default : isFlat ? keysIn_default : keys_default;
  var props = isArr ? void 0 : keysFunc(value2);
  arrayEach_default(props || value2, function(subValue, key2) {
    if (props) {
      key2 = subValue;
      subValue = value2[key2];
    }
    assignValue_default(result, key2, baseClone(subValue, bitmask, customizer, key2, value2, stack));
  });
  return result;
}
var baseClone_default = baseClone;

// node_modules/lodash-es/clone.js
var CLONE_SYMBOLS_FLAG2 = 4;
function clone(value2) {
  return baseClone_default(value2, CLONE_SYMBOLS_FLAG2);
}
var clone_default = clone;

// node_modules/lodash-es/compact.js
function compact(array) {
  var index = -1, length = array == null ? 0 : array.length, resIndex = 0, result = [];
  while (++index < length) {
    var value2 = array[index];
    if (value2) {
      result[resIndex++] = value2;
    }
  }
  return result;
}
var compact_default = compact;

// node_modules/lodash-es/_setCacheAdd.js
var HASH_UNDEFINED3 = "__lodash_hash_undefined__";
function setCacheAdd(value2) {
  this.__data__.set(value2, HASH_UNDEFINED3);
  return this;
}
var setCacheAdd_default = setCacheAdd;

// node_modules/lodash-es/_setCacheHas.js
function setCacheHas(value2) {
  return this.__data__.has(value2);
}
var setCacheHas_default = setCacheHas;

// node_modules/lodash-es/_SetCache.js
function SetCache(values2) {
  var index = -1, length = values2 == null ? 0 : values2.length;
  this.__data__ = new MapCache_default();
  while (++index < length) {
    this.add(values2[index]);
  }
}
SetCache.prototype.add = SetCache.prototype.push = setCacheAdd_default;
SetCache.prototype.has = setCacheHas_default;
var SetCache_default = SetCache;

// node_modules/lodash-es/_arraySome.js
function arraySome(array, predicate) {
  var index = -1, length = array == null ? 0 : array.length;
  while (++index < length) {
    if (predicate(array[index], index, array)) {
      return true;
    }
  }
  return false;
}
var arraySome_default = arraySome;

// node_modules/lodash-es/_cacheHas.js
function cacheHas(cache, key) {
  return cache.has(key);
}
var cacheHas_default = cacheHas;

// node_modules/lodash-es/_equalArrays.js
var COMPARE_PARTIAL_FLAG = 1;
var COMPARE_UNORDERED_FLAG = 2;
function equalArrays(array, other, bitmask, customizer, equalFunc, stack) {
  var isPartial = bitmask & COMPARE_PARTIAL_FLAG, arrLength = array.length, othLength = other.length;
  if (arrLength != othLength && !(isPartial && othLength > arrLength)) {
    return false;
  }
  var arrStacked = stack.get(array);
  var othStacked = stack.get(other);
  if (arrStacked && othStacked) {
    return arrStacked == other && othStacked == array;
  }
  var index = -1, result = true, seen = bitmask & COMPARE_UNORDERED_FLAG ? new SetCache_default() : void 0;
  stack.set(array, other);
  stack.set(other, array);
  while (++index < arrLength) {
    var arrValue = array[index], othValue = other[index];
    if (customizer) {
      var compared = isPartial ? customizer(othValue, arrValue, index, other, array, stack) : customizer(arrValue, othValue, index, array, other, stack);
    }
    if (compared !== void 0) {
      if (compared) {
        continue;
      }
      result = false;
      break;
    }
    if (seen) {
      if (!arraySome_default(other, function(othValue2, othIndex) {
        if (!cacheHas_default(seen, othIndex) && (arrValue === othValue2 || equalFunc(arrValue, othValue2, bitmask, customizer, stack))) {
          return seen.push(othIndex);
        }
      })) {
        result = false;
        break;
      }
    } else if (!(arrValue === othValue || equalFunc(arrValue, othValue, bitmask, customizer, stack))) {
      result = false;
      break;
    }
  }
  stack["delete"](array);
  stack["delete"](other);
  return result;
}
var equalArrays_default = equalArrays;

// node_modules/lodash-es/_mapToArray.js
function mapToArray(map2) {
  var index = -1, result = Array(map2.size);
  map2.forEach(function(value2, key) {
    result[++index] = [key, value2];
  });
  return result;
}
var mapToArray_default = mapToArray;

// node_modules/lodash-es/_setToArray.js
function setToArray(set) {
  var index = -1, result = Array(set.size);
  set.forEach(function(value2) {
    result[++index] = value2;
  });
  return result;
}
var setToArray_default = setToArray;

// node_modules/lodash-es/_equalByTag.js
var COMPARE_PARTIAL_FLAG2 = 1;
var COMPARE_UNORDERED_FLAG2 = 2;
var boolTag4 = "[object Boolean]";
var dateTag4 = "[object Date]";
var errorTag3 = "[object Error]";
var mapTag6 = "[object Map]";
var numberTag4 = "[object Number]";
var regexpTag4 = "[object RegExp]";
var setTag6 = "[object Set]";
var stringTag4 = "[object String]";
var symbolTag4 = "[object Symbol]";
var arrayBufferTag4 = "[object ArrayBuffer]";
var dataViewTag5 = "[object DataView]";
var symbolProto3 = Symbol_default ? Symbol_default.prototype : void 0;
var symbolValueOf2 = symbolProto3 ? symbolProto3.valueOf : void 0;
function equalByTag(object, other, tag, bitmask, customizer, equalFunc, stack) {
  switch (tag) {
    case dataViewTag5:
      if (object.byteLength != other.byteLength || object.byteOffset != other.byteOffset) {
        return false;
      }
      object = object.buffer;
      other = other.buffer;
    case arrayBufferTag4:
      if (object.byteLength != other.byteLength || !equalFunc(new Uint8Array_default(object), new Uint8Array_default(other))) {
        return false;
      }
      return true;
    case boolTag4:
    case dateTag4:
    case numberTag4:
      return eq_default(+object, +other);
    case errorTag3:
      return object.name == other.name && object.message == other.message;
    case regexpTag4:
    case stringTag4:
      return object == other + "";
    case mapTag6:
      var convert = mapToArray_default;
    case setTag6:
      var isPartial = bitmask & COMPARE_PARTIAL_FLAG2;
      convert || (convert = setToArray_default);
      if (object.size != other.size && !isPartial) {
        return false;
      }
      var stacked = stack.get(object);
      if (stacked) {
        return stacked == other;
      }
      bitmask |= COMPARE_UNORDERED_FLAG2;
      stack.set(object, other);
      var result = equalArrays_default(convert(object), convert(other), bitmask, customizer, equalFunc, stack);
      stack["delete"](object);
      return result;
    case symbolTag4:
      if (symbolValueOf2) {
        return symbolValueOf2.call(object) == symbolValueOf2.call(other);
      }
  }
  return false;
}
var equalByTag_default = equalByTag;

// node_modules/lodash-es/_equalObjects.js
var COMPARE_PARTIAL_FLAG3 = 1;
var objectProto15 = Object.prototype;
var hasOwnProperty12 = objectProto15.hasOwnProperty;
function equalObjects(object, other, bitmask, customizer, equalFunc, stack) {
  var isPartial = bitmask & COMPARE_PARTIAL_FLAG3, objProps = getAllKeys_default(object), objLength = objProps.length, othProps = getAllKeys_default(other), othLength = othProps.length;
  if (objLength != othLength && !isPartial) {
    return false;
  }
  var index = objLength;
  while (index--) {
    var key = objProps[index];
    if (!(isPartial ? key in other : hasOwnProperty12.call(other, key))) {
      return false;
    }
  }
  var objStacked = stack.get(object);
  var othStacked = stack.get(other);
  if (objStacked && othStacked) {
    return objStacked == other && othStacked == object;
  }
  var result = true;
  stack.set(object, other);
  stack.set(other, object);
  var skipCtor = isPartial;
  while (++index < objLength) {
    key = objProps[index];
    var objValue = object[key], othValue = other[key];
    if (customizer) {
      var compared = isPartial ? customizer(othValue, objValue, key, other, object, stack) : customizer(objValue, othValue, key, object, other, stack);
    }
    if (!(compared === void 0 ? objValue === othValue || equalFunc(objValue, othValue, bitmask, customizer, stack) : compared)) {
      result = false;
      break;
    }
    skipCtor || (skipCtor = key == "constructor");
  }
  if (result && !skipCtor) {
    var objCtor = object.constructor, othCtor = other.constructor;
    if (objCtor != othCtor && ("constructor" in object && "constructor" in other) && !(typeof objCtor == "function" && objCtor instanceof objCtor && typeof othCtor == "function" && othCtor instanceof othCtor)) {
      result = false;
    }
  }
  stack["delete"](object);
  stack["delete"](other);
  return result;
}
var equalObjects_default = equalObjects;

// node_modules/lodash-es/_baseIsEqualDeep.js
var COMPARE_PARTIAL_FLAG4 = 1;
var argsTag4 = "[object Arguments]";
var arrayTag3 = "[object Array]";
var objectTag4 = "[object Object]";
var objectProto16 = Object.prototype;
var hasOwnProperty13 = objectProto16.hasOwnProperty;
function baseIsEqualDeep(object, other, bitmask, customizer, equalFunc, stack) {
  var objIsArr = isArray_default(object), othIsArr = isArray_default(other), objTag = objIsArr ? arrayTag3 : getTag_default(object), othTag = othIsArr ? arrayTag3 : getTag_default(other);
  objTag = objTag == argsTag4 ? objectTag4 : objTag;
  othTag = othTag == argsTag4 ? objectTag4 : othTag;
  var objIsObj = objTag == objectTag4, othIsObj = othTag == objectTag4, isSameTag = objTag == othTag;
  if (isSameTag && isBuffer_default(object)) {
    if (!isBuffer_default(other)) {
      return false;
    }
    objIsArr = true;
    objIsObj = false;
  }
  if (isSameTag && !objIsObj) {
    stack || (stack = new Stack_default());
    return objIsArr || isTypedArray_default(object) ? equalArrays_default(object, other, bitmask, customizer, equalFunc, stack) : equalByTag_default(object, other, objTag, bitmask, customizer, equalFunc, stack);
  }
  if (!(bitmask & COMPARE_PARTIAL_FLAG4)) {
    var objIsWrapped = objIsObj && hasOwnProperty13.call(object, "__wrapped__"), othIsWrapped = othIsObj && hasOwnProperty13.call(other, "__wrapped__");
    if (objIsWrapped || othIsWrapped) {
      var objUnwrapped = objIsWrapped ? object.value() : object, othUnwrapped = othIsWrapped ? other.value() : other;
      stack || (stack = new Stack_default());
      return equalFunc(objUnwrapped, othUnwrapped, bitmask, customizer, stack);
    }
  }
  if (!isSameTag) {
    return false;
  }
  stack || (stack = new Stack_default());
  return equalObjects_default(object, other, bitmask, customizer, equalFunc, stack);
}
var baseIsEqualDeep_default = baseIsEqualDeep;

// node_modules/lodash-es/_baseIsEqual.js
function baseIsEqual(value2, other, bitmask, customizer, stack) {
  if (value2 === other) {
    return true;
  }
  if (value2 == null || other == null || !isObjectLike_default(value2) && !isObjectLike_default(other)) {
    return value2 !== value2 && other !== other;
  }
  return baseIsEqualDeep_default(value2, other, bitmask, customizer, baseIsEqual, stack);
}
var baseIsEqual_default = baseIsEqual;

// node_modules/lodash-es/_baseIsMatch.js
var COMPARE_PARTIAL_FLAG5 = 1;
var COMPARE_UNORDERED_FLAG3 = 2;
function baseIsMatch(object, source2, matchData, customizer) {
  var index = matchData.length, length = index, noCustomizer = !customizer;
  if (object == null) {
    return !length;
  }
  object = Object(object);
  while (index--) {
    var data = matchData[index];
    if (noCustomizer && data[2] ? data[1] !== object[data[0]] : !(data[0] in object)) {
      return false;
    }
  }
  while (++index < length) {
    data = matchData[index];
    var key = data[0], objValue = object[key], srcValue = data[1];
    if (noCustomizer && data[2]) {
      if (objValue === void 0 && !(key in object)) {
        return false;
      }
    } else {
      var stack = new Stack_default();
      if (customizer) {
        var result = customizer(objValue, srcValue, key, object, source2, stack);
      }
      if (!(result === void 0 ? baseIsEqual_default(srcValue, objValue, COMPARE_PARTIAL_FLAG5 | COMPARE_UNORDERED_FLAG3, customizer, stack) : result)) {
        return false;
      }
    }
  }
  return true;
}
var baseIsMatch_default = baseIsMatch;

// node_modules/lodash-es/_isStrictComparable.js
function isStrictComparable(value2) {
  return value2 === value2 && !isObject_default(value2);
}
var isStrictComparable_default = isStrictComparable;

// node_modules/lodash-es/_getMatchData.js
function getMatchData(object) {
  var result = keys_default(object), length = result.length;
  while (length--) {
    var key = result[length], value2 = object[key];
    result[length] = [key, value2, isStrictComparable_default(value2)];
  }
  return result;
}
var getMatchData_default = getMatchData;

// node_modules/lodash-es/_matchesStrictComparable.js
function matchesStrictComparable(key, srcValue) {
  return function(object) {
    if (object == null) {
      return false;
    }
    return object[key] === srcValue && (srcValue !== void 0 || key in Object(object));
  };
}
var matchesStrictComparable_default = matchesStrictComparable;

// node_modules/lodash-es/_baseMatches.js
function baseMatches(source2) {
  var matchData = getMatchData_default(source2);
  if (matchData.length == 1 && matchData[0][2]) {
    return matchesStrictComparable_default(matchData[0][0], matchData[0][1]);
  }
  return function(object) {
    return object === source2 || baseIsMatch_default(object, source2, matchData);
  };
}
var baseMatches_default = baseMatches;

// node_modules/lodash-es/_baseHasIn.js
function baseHasIn(object, key) {
  return object != null && key in Object(object);
}
var baseHasIn_default = baseHasIn;

// node_modules/lodash-es/_hasPath.js
function hasPath(object, path, hasFunc) {
  path = castPath_default(path, object);
  var index = -1, length = path.length, result = false;
  while (++index < length) {
    var key = toKey_default(path[index]);
    if (!(result = object != null && hasFunc(object, key))) {
      break;
    }
    object = object[key];
  }
  if (result || ++index != length) {
    return result;
  }
  length = object == null ? 0 : object.length;
  return !!length && isLength_default(length) && isIndex_default(key, length) && (isArray_default(object) || isArguments_default(object));
}
var hasPath_default = hasPath;

// node_modules/lodash-es/hasIn.js
function hasIn(object, path) {
  return object != null && hasPath_default(object, path, baseHasIn_default);
}
var hasIn_default = hasIn;

// node_modules/lodash-es/_baseMatchesProperty.js
var COMPARE_PARTIAL_FLAG6 = 1;
var COMPARE_UNORDERED_FLAG4 = 2;
function baseMatchesProperty(path, srcValue) {
  if (isKey_default(path) && isStrictComparable_default(srcValue)) {
    return matchesStrictComparable_default(toKey_default(path), srcValue);
  }
  return function(object) {
    var objValue = get_default(object, path);
    return objValue === void 0 && objValue === srcValue ? hasIn_default(object, path) : baseIsEqual_default(srcValue, objValue, COMPARE_PARTIAL_FLAG6 | COMPARE_UNORDERED_FLAG4);
  };
}
var baseMatchesProperty_default = baseMatchesProperty;

// node_modules/lodash-es/_baseProperty.js
function baseProperty(key) {
  return function(object) {
    return object == null ? void 0 : object[key];
  };
}
var baseProperty_default = baseProperty;

// node_modules/lodash-es/_basePropertyDeep.js
function basePropertyDeep(path) {
  return function(object) {
    return baseGet_default(object, path);
  };
}
var basePropertyDeep_default = basePropertyDeep;

// node_modules/lodash-es/property.js
function property(path) {
  return isKey_default(path) ? baseProperty_default(toKey_default(path)) : basePropertyDeep_default(path);
}
var property_default = property;

// node_modules/lodash-es/_baseIteratee.js
function baseIteratee(value2) {
  if (typeof value2 == "function") {
    return value2;
  }
  if (value2 == null) {
    return identity_default;
  }
  if (typeof value2 == "object") {
    return isArray_default(value2) ? baseMatchesProperty_default(value2[0], value2[1]) : baseMatches_default(value2);
  }
  return property_default(value2);
}
var baseIteratee_default = baseIteratee;

// node_modules/lodash-es/_arrayAggregator.js
function arrayAggregator(array, setter, iteratee, accumulator) {
  var index = -1, length = array == null ? 0 : array.length;
  while (++index < length) {
    var value2 = array[index];
    setter(accumulator, value2, iteratee(value2), array);
  }
  return accumulator;
}
var arrayAggregator_default = arrayAggregator;

// node_modules/lodash-es/_createBaseFor.js
function createBaseFor(fromRight) {
  return function(object, iteratee, keysFunc) {
    var index = -1, iterable = Object(object), props = keysFunc(object), length = props.length;
    while (length--) {
      var key = props[fromRight ? length : ++index];
      if (iteratee(iterable[key], key, iterable) === false) {
        break;
      }
    }
    return object;
  };
}
var createBaseFor_default = createBaseFor;

// node_modules/lodash-es/_baseFor.js
var baseFor = createBaseFor_default();
var baseFor_default = baseFor;

// node_modules/lodash-es/_baseForOwn.js
function baseForOwn(object, iteratee) {
  return object && baseFor_default(object, iteratee, keys_default);
}
var baseForOwn_default = baseForOwn;

// node_modules/lodash-es/_createBaseEach.js
function createBaseEach(eachFunc, fromRight) {
  return function(collection, iteratee) {
    if (collection == null) {
      return collection;
    }
    if (!isArrayLike_default(collection)) {
      return eachFunc(collection, iteratee);
    }
    var length = collection.length, index = fromRight ? length : -1, iterable = Object(collection);
    while (fromRight ? index-- : ++index < length) {
      if (iteratee(iterable[index], index, iterable) === false) {
        break;
      }
    }
    return collection;
  };
}
var createBaseEach_default = createBaseEach;

// node_modules/lodash-es/_baseEach.js
var baseEach = createBaseEach_default(baseForOwn_default);
var baseEach_default = baseEach;

// node_modules/lodash-es/_baseAggregator.js
function baseAggregator(collection, setter, iteratee, accumulator) {
  baseEach_default(collection, function(value2, key, collection2) {
    setter(accumulator, value2, iteratee(value2), collection2);
  });
  return accumulator;
}
var baseAggregator_default = baseAggregator;

// node_modules/lodash-es/_createAggregator.js
function createAggregator(setter, initializer) {
  return function(collection, iteratee) {
    var func = isArray_default(collection) ? arrayAggregator_default : baseAggregator_default, accumulator = initializer ? initializer() : {};
    return func(collection, setter, baseIteratee_default(iteratee, 2), accumulator);
  };
}
var createAggregator_default = createAggregator;

// node_modules/lodash-es/defaults.js
var objectProto17 = Object.prototype;
var hasOwnProperty14 = objectProto17.hasOwnProperty;
var defaults = baseRest_default(function(object, sources2) {
  object = Object(object);
  var index = -1;
  var length = sources2.length;
  var guard = length > 2 ? sources2[2] : void 0;
  if (guard && isIterateeCall_default(sources2[0], sources2[1], guard)) {
    length = 1;
  }
  while (++index < length) {
    var source2 = sources2[index];
    var props = keysIn_default(source2);
    var propsIndex = -1;
    var propsLength = props.length;
    while (++propsIndex < propsLength) {
      var key = props[propsIndex];
      var value2 = object[key];
      if (value2 === void 0 || eq_default(value2, objectProto17[key]) && !hasOwnProperty14.call(object, key)) {
        object[key] = source2[key];
      }
    }
  }
  return object;
});
var defaults_default = defaults;

// node_modules/lodash-es/isArrayLikeObject.js
function isArrayLikeObject(value2) {
  return isObjectLike_default(value2) && isArrayLike_default(value2);
}
var isArrayLikeObject_default = isArrayLikeObject;

// node_modules/lodash-es/_arrayIncludesWith.js
function arrayIncludesWith(array, value2, comparator) {
  var index = -1, length = array == null ? 0 : array.length;
  while (++index < length) {
    if (comparator(value2, array[index])) {
      return true;
    }
  }
  return false;
}
var arrayIncludesWith_default = arrayIncludesWith;

// node_modules/lodash-es/_baseDifference.js
var LARGE_ARRAY_SIZE2 = 200;
function baseDifference(array, values2, iteratee, comparator) {
  var index = -1, includes2 = arrayIncludes_default, isCommon = true, length = array.length, result = [], valuesLength = values2.length;
  if (!length) {
    return result;
  }
  if (iteratee) {
    values2 = arrayMap_default(values2, baseUnary_default(iteratee));
  }
  if (comparator) {
    includes2 = arrayIncludesWith_default;
    isCommon = false;
  } else if (values2.length >= LARGE_ARRAY_SIZE2) {
    includes2 = cacheHas_default;
    isCommon = false;
    values2 = new SetCache_default(values2);
  }
  outer:
    while (++index < length) {
      var value2 = array[index], computed = iteratee == null ? value2 : iteratee(value2);
      value2 = comparator || value2 !== 0 ? value2 : 0;
      if (isCommon && computed === computed) {
        var valuesIndex = valuesLength;
        while (valuesIndex--) {
          if (values2[valuesIndex] === computed) {
            continue outer;
          }
        }
        result.push(value2);
      } else if (!includes2(values2, computed, comparator)) {
        result.push(value2);
      }
    }
  return result;
}
var baseDifference_default = baseDifference;

// node_modules/lodash-es/difference.js
var difference = baseRest_default(function(array, values2) {
  return isArrayLikeObject_default(array) ? baseDifference_default(array, baseFlatten_default(values2, 1, isArrayLikeObject_default, true)) : [];
});
var difference_default = difference;

// node_modules/lodash-es/last.js
function last(array) {
  var length = array == null ? 0 : array.length;
  return length ? array[length - 1] : void 0;
}
var last_default = last;

// node_modules/lodash-es/drop.js
function drop(array, n, guard) {
  var length = array == null ? 0 : array.length;
  if (!length) {
    return [];
  }
  n = guard || n === void 0 ? 1 : toInteger_default(n);
  return baseSlice_default(array, n < 0 ? 0 : n, length);
}
var drop_default = drop;

// node_modules/lodash-es/dropRight.js
function dropRight(array, n, guard) {
  var length = array == null ? 0 : array.length;
  if (!length) {
    return [];
  }
  n = guard || n === void 0 ? 1 : toInteger_default(n);
  n = length - n;
  return baseSlice_default(array, 0, n < 0 ? 0 : n);
}
var dropRight_default = dropRight;

// node_modules/lodash-es/_castFunction.js
function castFunction(value2) {
  return typeof value2 == "function" ? value2 : identity_default;
}
var castFunction_default = castFunction;

// node_modules/lodash-es/forEach.js
function forEach(collection, iteratee) {
  var func = isArray_default(collection) ? arrayEach_default : baseEach_default;
  return func(collection, castFunction_default(iteratee));
}
var forEach_default = forEach;

// node_modules/lodash-es/_arrayEvery.js
function arrayEvery(array, predicate) {
  var index = -1, length = array == null ? 0 : array.length;
  while (++index < length) {
    if (!predicate(array[index], index, array)) {
      return false;
    }
  }
  return true;
}
var arrayEvery_default = arrayEvery;

// node_modules/lodash-es/_baseEvery.js
function baseEvery(collection, predicate) {
  var result = true;
  baseEach_default(collection, function(value2, index, collection2) {
    result = !!predicate(value2, index, collection2);
    return result;
  });
  return result;
}
var baseEvery_default = baseEvery;

// node_modules/lodash-es/every.js
function every(collection, predicate, guard) {
  var func = isArray_default(collection) ? arrayEvery_default : baseEvery_default;
  if (guard && isIterateeCall_default(collection, predicate, guard)) {
    predicate = void 0;
  }
  return func(collection, baseIteratee_default(predicate, 3));
}
var every_default = every;

// node_modules/lodash-es/_baseFilter.js
function baseFilter(collection, predicate) {
  var result = [];
  baseEach_default(collection, function(value2, index, collection2) {
    if (predicate(value2, index, collection2)) {
      result.push(value2);
    }
  });
  return result;
}
var baseFilter_default = baseFilter;

// node_modules/lodash-es/filter.js
function filter(collection, predicate) {
  var func = isArray_default(collection) ? arrayFilter_default : baseFilter_default;
  return func(collection, baseIteratee_default(predicate, 3));
}
var filter_default = filter;

// node_modules/lodash-es/_createFind.js
function createFind(findIndexFunc) {
  return function(collection, predicate, fromIndex) {
    var iterable = Object(collection);
    if (!isArrayLike_default(collection)) {
      var iteratee = baseIteratee_default(predicate, 3);
      collection = keys_default(collection);
      predicate = function(key) {
        return iteratee(iterable[key], key, iterable);
      };
    }
    var index = findIndexFunc(collection, predicate, fromIndex);
    return index > -1 ? iterable[iteratee ? collection[index] : index] : void 0;
  };
}
var createFind_default = createFind;

// node_modules/lodash-es/findIndex.js
var nativeMax2 = Math.max;
function findIndex(array, predicate, fromIndex) {
  var length = array == null ? 0 : array.length;
  if (!length) {
    return -1;
  }
  var index = fromIndex == null ? 0 : toInteger_default(fromIndex);
  if (index < 0) {
    index = nativeMax2(length + index, 0);
  }
  return baseFindIndex_default(array, baseIteratee_default(predicate, 3), index);
}
var findIndex_default = findIndex;

// node_modules/lodash-es/find.js
var find = createFind_default(findIndex_default);
var find_default = find;

// node_modules/lodash-es/head.js
function head(array) {
  return array && array.length ? array[0] : void 0;
}
var head_default = head;

// node_modules/lodash-es/_baseMap.js
function baseMap(collection, iteratee) {
  var index = -1, result = isArrayLike_default(collection) ? Array(collection.length) : [];
  baseEach_default(collection, function(value2, key, collection2) {
    result[++index] = iteratee(value2, key, collection2);
  });
  return result;
}
var baseMap_default = baseMap;

// node_modules/lodash-es/map.js
function map(collection, iteratee) {
  var func = isArray_default(collection) ? arrayMap_default : baseMap_default;
  return func(collection, baseIteratee_default(iteratee, 3));
}
var map_default = map;

// node_modules/lodash-es/flatMap.js
function flatMap(collection, iteratee) {
  return baseFlatten_default(map_default(collection, iteratee), 1);
}
var flatMap_default = flatMap;

// node_modules/lodash-es/groupBy.js
var objectProto18 = Object.prototype;
var hasOwnProperty15 = objectProto18.hasOwnProperty;
var groupBy = createAggregator_default(function(result, value2, key) {
  if (hasOwnProperty15.call(result, key)) {
    result[key].push(value2);
  } else {
    baseAssignValue_default(result, key, [value2]);
  }
});
var groupBy_default = groupBy;

// node_modules/lodash-es/_baseHas.js
var objectProto19 = Object.prototype;
var hasOwnProperty16 = objectProto19.hasOwnProperty;
function baseHas(object, key) {
  return object != null && hasOwnProperty16.call(object, key);
}
var baseHas_default = baseHas;

// node_modules/lodash-es/has.js
function has(object, path) {
  return object != null && hasPath_default(object, path, baseHas_default);
}
var has_default = has;

// node_modules/lodash-es/isString.js
var stringTag5 = "[object String]";
function isString(value2) {
  return typeof value2 == "string" || !isArray_default(value2) && isObjectLike_default(value2) && baseGetTag_default(value2) == stringTag5;
}
var isString_default = isString;

// node_modules/lodash-es/_baseValues.js
function baseValues(object, props) {
  return arrayMap_default(props, function(key) {
    return object[key];
  });
}
var baseValues_default = baseValues;

// node_modules/lodash-es/values.js
function values(object) {
  return object == null ? [] : baseValues_default(object, keys_default(object));
}
var values_default = values;

// node_modules/lodash-es/includes.js
var nativeMax3 = Math.max;
function includes(collection, value2, fromIndex, guard) {
  collection = isArrayLike_default(collection) ? collection : values_default(collection);
  fromIndex = fromIndex && !guard ? toInteger_default(fromIndex) : 0;
  var length = collection.length;
  if (fromIndex < 0) {
    fromIndex = nativeMax3(length + fromIndex, 0);
  }
  return isString_default(collection) ? fromIndex <= length && collection.indexOf(value2, fromIndex) > -1 : !!length && baseIndexOf_default(collection, value2, fromIndex) > -1;
}
var includes_default = includes;

// node_modules/lodash-es/indexOf.js
var nativeMax4 = Math.max;
function indexOf(array, value2, fromIndex) {
  var length = array == null ? 0 : array.length;
  if (!length) {
    return -1;
  }
  var index = fromIndex == null ? 0 : toInteger_default(fromIndex);
  if (index < 0) {
    index = nativeMax4(length + index, 0);
  }
  return baseIndexOf_default(array, value2, index);
}
var indexOf_default = indexOf;

// node_modules/lodash-es/isEmpty.js
var mapTag7 = "[object Map]";
var setTag7 = "[object Set]";
var objectProto20 = Object.prototype;
var hasOwnProperty17 = objectProto20.hasOwnProperty;
function isEmpty(value2) {
  if (value2 == null) {
    return true;
  }
  if (isArrayLike_default(value2) && (isArray_default(value2) || typeof value2 == "string" || typeof value2.splice == "function" || isBuffer_default(value2) || isTypedArray_default(value2) || isArguments_default(value2))) {
    return !value2.length;
  }
  var tag = getTag_default(value2);
  if (tag == mapTag7 || tag == setTag7) {
    return !value2.size;
  }
  if (isPrototype_default(value2)) {
    return !baseKeys_default(value2).length;
  }
  for (var key in value2) {
    if (hasOwnProperty17.call(value2, key)) {
      return false;
    }
  }
  return true;
}
var isEmpty_default = isEmpty;

// node_modules/lodash-es/_baseIsRegExp.js
var regexpTag5 = "[object RegExp]";
function baseIsRegExp(value2) {
  return isObjectLike_default(value2) && baseGetTag_default(value2) == regexpTag5;
}
var baseIsRegExp_default = baseIsRegExp;

// node_modules/lodash-es/isRegExp.js
var nodeIsRegExp = nodeUtil_default && nodeUtil_default.isRegExp;
var isRegExp = nodeIsRegExp ? baseUnary_default(nodeIsRegExp) : baseIsRegExp_default;
var isRegExp_default = isRegExp;

// node_modules/lodash-es/isUndefined.js
function isUndefined(value2) {
  return value2 === void 0;
}
var isUndefined_default = isUndefined;

// node_modules/lodash-es/negate.js
var FUNC_ERROR_TEXT2 = "Expected a function";
function negate(predicate) {
  if (typeof predicate != "function") {
    throw new TypeError(FUNC_ERROR_TEXT2);
  }
  return function() {
    var args = arguments;
    switch (args.length) {
      case 0:
        return !predicate.call(this);
      case 1:
        return !predicate.call(this, args[0]);
      case 2:
        return !predicate.call(this, args[0], args[1]);
      case 3:
        return !predicate.call(this, args[0], args[1], args[2]);
    }
    return !predicate.apply(this, args);
  };
}
var negate_default = negate;

// node_modules/lodash-es/_baseSet.js
function baseSet(object, path, value2, customizer) {
  if (!isObject_default(object)) {
    return object;
  }
  path = castPath_default(path, object);
  var index = -1, length = path.length, lastIndex = length - 1, nested = object;
  while (nested != null && ++index < length) {
    var key = toKey_default(path[index]), newValue = value2;
    if (key === "__proto__" || key === "constructor" || key === "prototype") {
      return object;
    }
    if (index != lastIndex) {
      var objValue = nested[key];
      newValue = customizer ? customizer(objValue, key, nested) : void 0;
      if (newValue === void 0) {
        newValue = isObject_default(objValue) ? objValue : isIndex_default(path[index + 1]) ? [] : {};
      }
    }
    assignValue_default(nested, key, newValue);
    nested = nested[key];
  }
  return object;
}
var baseSet_default = baseSet;

// node_modules/lodash-es/_basePickBy.js
function basePickBy(object, paths, predicate) {
  var index = -1, length = paths.length, result = {};
  while (++index < length) {
    var path = paths[index], value2 = baseGet_default(object, path);
    if (predicate(value2, path)) {
      baseSet_default(result, castPath_default(path, object), value2);
    }
  }
  return result;
}
var basePickBy_default = basePickBy;

// node_modules/lodash-es/pickBy.js
function pickBy(object, predicate) {
  if (object == null) {
    return {};
  }
  var props = arrayMap_default(getAllKeysIn_default(object), function(prop) {
    return [prop];
  });
  predicate = baseIteratee_default(predicate);
  return basePickBy_default(object, props, function(value2, path) {
    return predicate(value2, path[0]);
  });
}
var pickBy_default = pickBy;

// node_modules/lodash-es/_baseReduce.js
function baseReduce(collection, iteratee, accumulator, initAccum, eachFunc) {
  eachFunc(collection, function(value2, index, collection2) {
    accumulator = initAccum ? (initAccum = false, value2) : iteratee(accumulator, value2, index, collection2);
  });
  return accumulator;
}
var baseReduce_default = baseReduce;

// node_modules/lodash-es/reduce.js
function reduce(collection, iteratee, accumulator) {
  var func = isArray_default(collection) ? arrayReduce_default : baseReduce_default, initAccum = arguments.length < 3;
  return func(collection, baseIteratee_default(iteratee, 4), accumulator, initAccum, baseEach_default);
}
var reduce_default = reduce;

// node_modules/lodash-es/reject.js
function reject(collection, predicate) {
  var func = isArray_default(collection) ? arrayFilter_default : baseFilter_default;
  return func(collection, negate_default(baseIteratee_default(predicate, 3)));
}
var reject_default = reject;

// node_modules/lodash-es/_baseSome.js
function baseSome(collection, predicate) {
  var result;
  baseEach_default(collection, function(value2, index, collection2) {
    result = predicate(value2, index, collection2);
    return !result;
  });
  return !!result;
}
var baseSome_default = baseSome;

// node_modules/lodash-es/some.js
function some(collection, predicate, guard) {
  var func = isArray_default(collection) ? arraySome_default : baseSome_default;
  if (guard && isIterateeCall_default(collection, predicate, guard)) {
    predicate = void 0;
  }
  return func(collection, baseIteratee_default(predicate, 3));
}
var some_default = some;

// node_modules/lodash-es/_createSet.js
var INFINITY4 = 1 / 0;
var createSet = !(Set_default && 1 / setToArray_default(new Set_default([, -0]))[1] == INFINITY4) ? noop_default : function(values2) {
  return new Set_default(values2);
};
var createSet_default = createSet;

// node_modules/lodash-es/_baseUniq.js
var LARGE_ARRAY_SIZE3 = 200;
function baseUniq(array, iteratee, comparator) {
  var index = -1, includes2 = arrayIncludes_default, length = array.length, isCommon = true, result = [], seen = result;
  if (comparator) {
    isCommon = false;
    includes2 = arrayIncludesWith_default;
  } else if (length >= LARGE_ARRAY_SIZE3) {
    var set = iteratee ? null : createSet_default(array);
    if (set) {
      return setToArray_default(set);
    }
    isCommon = false;
    includes2 = cacheHas_default;
    seen = new SetCache_default();
  } else {
    seen = iteratee ? [] : result;
  }
  outer:
    while (++index < length) {
      var value2 = array[index], computed = iteratee ? iteratee(value2) : value2;
      value2 = comparator || value2 !== 0 ? value2 : 0;
      if (isCommon && computed === computed) {
        var seenIndex = seen.length;
        while (seenIndex--) {
          if (seen[seenIndex] === computed) {
            continue outer;
          }
        }
        if (iteratee) {
          seen.push(computed);
        }
        result.push(value2);
      } else if (!includes2(seen, computed, comparator)) {
        if (seen !== result) {
          seen.push(computed);
        }
        result.push(value2);
      }
    }
  return result;
}
var baseUniq_default = baseUniq;

// node_modules/lodash-es/uniq.js
function uniq(array) {
  return array && array.length ? baseUniq_default(array) : [];
}
var uniq_default = uniq;

// node_modules/@chevrotain/utils/lib/src/print.js
function PRINT_ERROR(msg) {
  if (console && console.error) {
    console.error(`Error: ${msg}`);
  }
}
function PRINT_WARNING(msg) {
  if (console && console.warn) {
    console.warn(`Warning: ${msg}`);
  }
}

// node_modules/@chevrotain/utils/lib/src/timer.js
function timer(func) {
  const start = (/* @__PURE__ */ new Date()).getTime();
  const val = func();
  const end = (/* @__PURE__ */ new Date()).getTime();
  const total = end - start;
  return { time: total, value: val };
}

// node_modules/@chevrotain/utils/lib/src/to-fast-properties.js
function toFastProperties(toBecomeFast) {
  function FakeConstructor() {
  }
  FakeConstructor.prototype = toBecomeFast;
  const fakeInstance = new FakeConstructor();
  function fakeAccess() {
    return typeof fakeInstance.bar;
  }
  fakeAccess();
  fakeAccess();
  if (1)
    return toBecomeFast;
  (0, eval)(toBecomeFast);
}

// node_modules/@chevrotain/gast/lib/src/model.js
function tokenLabel(tokType) {
  if (hasTokenLabel(tokType)) {
    return tokType.LABEL;
  } else {
    return tokType.name;
  }
}
function hasTokenLabel(obj) {
  return isString_default(obj.LABEL) && obj.LABEL !== "";
}
var AbstractProduction = class {
  get definition() {
    return this._definition;
  }
  set definition(value2) {
    this._definition = value2;
  }
  constructor(_definition) {
    this._definition = _definition;
  }
  accept(visitor) {
    visitor.visit(this);
    forEach_default(this.definition, (prod) => {
      prod.accept(visitor);
    });
  }
};
var NonTerminal = class extends AbstractProduction {
  constructor(options2) {
    super([]);
    this.idx = 1;
    assign_default(this, pickBy_default(options2, (v) => v !== void 0));
  }
  set definition(definition) {
  }
  get definition() {
    if (this.referencedRule !== void 0) {
      return this.referencedRule.definition;
    }
    return [];
  }
  accept(visitor) {
    visitor.visit(this);
  }
};
var Rule = class extends AbstractProduction {
  constructor(options2) {
    super(options2.definition);
    this.orgText = "";
    assign_default(this, pickBy_default(options2, (v) => v !== void 0));
  }
};
var Alternative = class extends AbstractProduction {
  constructor(options2) {
    super(options2.definition);
    this.ignoreAmbiguities = false;
    assign_default(this, pickBy_default(options2, (v) => v !== void 0));
  }
};
var Option = class extends AbstractProduction {
  constructor(options2) {
    super(options2.definition);
    this.idx = 1;
    assign_default(this, pickBy_default(options2, (v) => v !== void 0));
  }
};
var RepetitionMandatory = class extends AbstractProduction {
  constructor(options2) {
    super(options2.definition);
    this.idx = 1;
    assign_default(this, pickBy_default(options2, (v) => v !== void 0));
  }
};
var RepetitionMandatoryWithSeparator = class extends AbstractProduction {
  constructor(options2) {
    super(options2.definition);
    this.idx = 1;
    assign_default(this, pickBy_default(options2, (v) => v !== void 0));
  }
};
var Repetition = class extends AbstractProduction {
  constructor(options2) {
    super(options2.definition);
    this.idx = 1;
    assign_default(this, pickBy_default(options2, (v) => v !== void 0));
  }
};
var RepetitionWithSeparator = class extends AbstractProduction {
  constructor(options2) {
    super(options2.definition);
    this.idx = 1;
    assign_default(this, pickBy_default(options2, (v) => v !== void 0));
  }
};
var Alternation = class extends AbstractProduction {
  get definition() {
    return this._definition;
  }
  set definition(value2) {
    this._definition = value2;
  }
  constructor(options2) {
    super(options2.definition);
    this.idx = 1;
    this.ignoreAmbiguities = false;
    this.hasPredicates = false;
    assign_default(this, pickBy_default(options2, (v) => v !== void 0));
  }
};
var Terminal = class {
  constructor(options2) {
    this.idx = 1;
    assign_default(this, pickBy_default(options2, (v) => v !== void 0));
  }
  accept(visitor) {
    visitor.visit(this);
  }
};
function serializeGrammar(topRules) {
  return map_default(topRules, serializeProduction);
}
function serializeProduction(node) {
  function convertDefinition(definition) {
    return map_default(definition, serializeProduction);
  }
  if (node instanceof NonTerminal) {
    const serializedNonTerminal = {
      type: "NonTerminal",
      name: node.nonTerminalName,
      idx: node.idx
    };
    if (isString_default(node.label)) {
      serializedNonTerminal.label = node.label;
    }
    return serializedNonTerminal;
  } else if (node instanceof Alternative) {
    return {
      type: "Alternative",
      definition: convertDefinition(node.definition)
    };
  } else if (node instanceof Option) {
    return {
      type: "Option",
      idx: node.idx,
      definition: convertDefinition(node.definition)
    };
  } else if (node instanceof RepetitionMandatory) {
    return {
      type: "RepetitionMandatory",
      idx: node.idx,
      definition: convertDefinition(node.definition)
    };
  } else if (node instanceof RepetitionMandatoryWithSeparator) {
    return {
      type: "RepetitionMandatoryWithSeparator",
      idx: node.idx,
      separator: serializeProduction(new Terminal({ terminalType: node.separator })),
      definition: convertDefinition(node.definition)
    };
  } else if (node instanceof RepetitionWithSeparator) {
    return {
      type: "RepetitionWithSeparator",
      idx: node.idx,
      separator: serializeProduction(new Terminal({ terminalType: node.separator })),
      definition: convertDefinition(node.definition)
    };
  } else if (node instanceof Repetition) {
    return {
      type: "Repetition",
      idx: node.idx,
      definition: convertDefinition(node.definition)
    };
  } else if (node instanceof Alternation) {
    return {
      type: "Alternation",
      idx: node.idx,
      definition: convertDefinition(node.definition)
    };
  } else if (node instanceof Terminal) {
    const serializedTerminal = {
      type: "Terminal",
      name: node.terminalType.name,
      label: tokenLabel(node.terminalType),
      idx: node.idx
    };
    if (isString_default(node.label)) {
      serializedTerminal.terminalLabel = node.label;
    }
    const pattern = node.terminalType.PATTERN;
    if (node.terminalType.PATTERN) {
      serializedTerminal.pattern = isRegExp_default(pattern) ? pattern.source : pattern;
    }
    return serializedTerminal;
  } else if (node instanceof Rule) {
    return {
      type: "Rule",
      name: node.name,
      orgText: node.orgText,
      definition: convertDefinition(node.definition)
    };
  } else {
    throw Error("non exhaustive match");
  }
}

// node_modules/@chevrotain/gast/lib/src/visitor.js
var GAstVisitor = class {
  visit(node) {
    const nodeAny = node;
    switch (nodeAny.constructor) {
      case NonTerminal:
        return this.visitNonTerminal(nodeAny);
      case Alternative:
        return this.visitAlternative(nodeAny);
      case Option:
        return this.visitOption(nodeAny);
      case RepetitionMandatory:
        return this.visitRepetitionMandatory(nodeAny);
      case RepetitionMandatoryWithSeparator:
        return this.visitRepetitionMandatoryWithSeparator(nodeAny);
      case RepetitionWithSeparator:
        return this.visitRepetitionWithSeparator(nodeAny);
      case Repetition:
        return this.visitRepetition(nodeAny);
      case Alternation:
        return this.visitAlternation(nodeAny);
      case Terminal:
        return this.visitTerminal(nodeAny);
      case Rule:
        return this.visitRule(nodeAny);
      /* c8 ignore next 2 */
      default:
        throw Error("non exhaustive match");
    }
  }
  /* c8 ignore next */
  visitNonTerminal(node) {
  }
  /* c8 ignore next */
  visitAlternative(node) {
  }
  /* c8 ignore next */
  visitOption(node) {
  }
  /* c8 ignore next */
  visitRepetition(node) {
  }
  /* c8 ignore next */
  visitRepetitionMandatory(node) {
  }
  /* c8 ignore next 3 */
  visitRepetitionMandatoryWithSeparator(node) {
  }
  /* c8 ignore next */
  visitRepetitionWithSeparator(node) {
  }
  /* c8 ignore next */
  visitAlternation(node) {
  }
  /* c8 ignore next */
  visitTerminal(node) {
  }
  /* c8 ignore next */
  visitRule(node) {
  }
};

// node_modules/@chevrotain/gast/lib/src/helpers.js
function isSequenceProd(prod) {
  return prod instanceof Alternative || prod instanceof Option || prod instanceof Repetition || prod instanceof RepetitionMandatory || prod instanceof RepetitionMandatoryWithSeparator || prod instanceof RepetitionWithSeparator || prod instanceof Terminal || prod instanceof Rule;
}
function isOptionalProd(prod, alreadyVisited = []) {
  const isDirectlyOptional = prod instanceof Option || prod instanceof Repetition || prod instanceof RepetitionWithSeparator;
  if (isDirectlyOptional) {
    return true;
  }
  if (prod instanceof Alternation) {
    return some_default(prod.definition, (subProd) => {
      return isOptionalProd(subProd, alreadyVisited);
    });
  } else if (prod instanceof NonTerminal && includes_default(alreadyVisited, prod)) {
    return false;
  } else if (prod instanceof AbstractProduction) {
    if (prod instanceof NonTerminal) {
      alreadyVisited.push(prod);
    }
    return every_default(prod.definition, (subProd) => {
      return isOptionalProd(subProd, alreadyVisited);
    });
  } else {
    return false;
  }
}
function isBranchingProd(prod) {
  return prod instanceof Alternation;
}
function getProductionDslName(prod) {
  if (prod instanceof NonTerminal) {
    return "SUBRULE";
  } else if (prod instanceof Option) {
    return "OPTION";
  } else if (prod instanceof Alternation) {
    return "OR";
  } else if (prod instanceof RepetitionMandatory) {
    return "AT_LEAST_ONE";
  } else if (prod instanceof RepetitionMandatoryWithSeparator) {
    return "AT_LEAST_ONE_SEP";
  } else if (prod instanceof RepetitionWithSeparator) {
    return "MANY_SEP";
  } else if (prod instanceof Repetition) {
    return "MANY";
  } else if (prod instanceof Terminal) {
    return "CONSUME";
  } else {
    throw Error("non exhaustive match");
  }
}

// node_modules/chevrotain/lib/src/parse/grammar/rest.js
var RestWalker = class {
  walk(prod, prevRest = []) {
    forEach_default(prod.definition, (subProd, index) => {
      const currRest = drop_default(prod.definition, index + 1);
      if (subProd instanceof NonTerminal) {
        this.walkProdRef(subProd, currRest, prevRest);
      } else if (subProd instanceof Terminal) {
        this.walkTerminal(subProd, currRest, prevRest);
      } else if (subProd instanceof Alternative) {
        this.walkFlat(subProd, currRest, prevRest);
      } else if (subProd instanceof Option) {
        this.walkOption(subProd, currRest, prevRest);
      } else if (subProd instanceof RepetitionMandatory) {
        this.walkAtLeastOne(subProd, currRest, prevRest);
      } else if (subProd instanceof RepetitionMandatoryWithSeparator) {
        this.walkAtLeastOneSep(subProd, currRest, prevRest);
      } else if (subProd instanceof RepetitionWithSeparator) {
        this.walkManySep(subProd, currRest, prevRest);
      } else if (subProd instanceof Repetition) {
        this.walkMany(subProd, currRest, prevRest);
      } else if (subProd instanceof Alternation) {
        this.walkOr(subProd, currRest, prevRest);
      } else {
        throw Error("non exhaustive match");
      }
    });
  }
  walkTerminal(terminal, currRest, prevRest) {
  }
  walkProdRef(refProd, currRest, prevRest) {
  }
  walkFlat(flatProd, currRest, prevRest) {
    const fullOrRest = currRest.concat(prevRest);
    this.walk(flatProd, fullOrRest);
  }
  walkOption(optionProd, currRest, prevRest) {
    const fullOrRest = currRest.concat(prevRest);
    this.walk(optionProd, fullOrRest);
  }
  walkAtLeastOne(atLeastOneProd, currRest, prevRest) {
    const fullAtLeastOneRest = [
      new Option({ definition: atLeastOneProd.definition })
    ].concat(currRest, prevRest);
    this.walk(atLeastOneProd, fullAtLeastOneRest);
  }
  walkAtLeastOneSep(atLeastOneSepProd, currRest, prevRest) {
    const fullAtLeastOneSepRest = restForRepetitionWithSeparator(atLeastOneSepProd, currRest, prevRest);
    this.walk(atLeastOneSepProd, fullAtLeastOneSepRest);
  }
  walkMany(manyProd, currRest, prevRest) {
    const fullManyRest = [
      new Option({ definition: manyProd.definition })
    ].concat(currRest, prevRest);
    this.walk(manyProd, fullManyRest);
  }
  walkManySep(manySepProd, currRest, prevRest) {
    const fullManySepRest = restForRepetitionWithSeparator(manySepProd, currRest, prevRest);
    this.walk(manySepProd, fullManySepRest);
  }
  walkOr(orProd, currRest, prevRest) {
    const fullOrRest = currRest.concat(prevRest);
    forEach_default(orProd.definition, (alt) => {
      const prodWrapper = new Alternative({ definition: [alt] });
      this.walk(prodWrapper, fullOrRest);
    });
  }
};
function restForRepetitionWithSeparator(repSepProd, currRest, prevRest) {
  const repSepRest = [
    new Option({
      definition: [
        new Terminal({ terminalType: repSepProd.separator })
      ].concat(repSepProd.definition)
    })
  ];
  const fullRepSepRest = repSepRest.concat(currRest, prevRest);
  return fullRepSepRest;
}

// node_modules/chevrotain/lib/src/parse/grammar/first.js
function first(prod) {
  if (prod instanceof NonTerminal) {
    return first(prod.referencedRule);
  } else if (prod instanceof Terminal) {
    return firstForTerminal(prod);
  } else if (isSequenceProd(prod)) {
    return firstForSequence(prod);
  } else if (isBranchingProd(prod)) {
    return firstForBranching(prod);
  } else {
    throw Error("non exhaustive match");
  }
}
function firstForSequence(prod) {
  let firstSet = [];
  const seq = prod.definition;
  let nextSubProdIdx = 0;
  let hasInnerProdsRemaining = seq.length > nextSubProdIdx;
  let currSubProd;
  let isLastInnerProdOptional = true;
  while (hasInnerProdsRemaining && isLastInnerProdOptional) {
    currSubProd = seq[nextSubProdIdx];
    isLastInnerProdOptional = isOptionalProd(currSubProd);
    firstSet = firstSet.concat(first(currSubProd));
    nextSubProdIdx = nextSubProdIdx + 1;
    hasInnerProdsRemaining = seq.length > nextSubProdIdx;
  }
  return uniq_default(firstSet);
}
function firstForBranching(prod) {
  const allAlternativesFirsts = map_default(prod.definition, (innerProd) => {
    return first(innerProd);
  });
  return uniq_default(flatten_default(allAlternativesFirsts));
}
function firstForTerminal(terminal) {
  return [terminal.terminalType];
}

// node_modules/chevrotain/lib/src/parse/constants.js
var IN = "_~IN~_";

// node_modules/chevrotain/lib/src/parse/grammar/follow.js
var ResyncFollowsWalker = class extends RestWalker {
  constructor(topProd) {
    super();
    this.topProd = topProd;
    this.follows = {};
  }
  startWalking() {
    this.walk(this.topProd);
    return this.follows;
  }
  walkTerminal(terminal, currRest, prevRest) {
  }
  walkProdRef(refProd, currRest, prevRest) {
    const followName = buildBetweenProdsFollowPrefix(refProd.referencedRule, refProd.idx) + this.topProd.name;
    const fullRest = currRest.concat(prevRest);
    const restProd = new Alternative({ definition: fullRest });
    const t_in_topProd_follows = first(restProd);
    this.follows[followName] = t_in_topProd_follows;
  }
};
function computeAllProdsFollows(topProductions) {
  const reSyncFollows = {};
  forEach_default(topProductions, (topProd) => {
    const currRefsFollow = new ResyncFollowsWalker(topProd).startWalking();
    assign_default(reSyncFollows, currRefsFollow);
  });
  return reSyncFollows;
}
function buildBetweenProdsFollowPrefix(inner, occurenceInParent) {
  return inner.name + occurenceInParent + IN;
}

// node_modules/@chevrotain/regexp-to-ast/lib/src/utils.js
function cc(char) {
  return char.charCodeAt(0);
}
function insertToSet(item2, set) {
  if (Array.isArray(item2)) {
    item2.forEach(function(subItem2) {
      set.push(subItem2);
    });
  } else {
    set.push(item2);
  }
}
function addFlag(flagObj, flagKey) {
  if (flagObj[flagKey] === true) {
    throw "duplicate flag " + flagKey;
  }
  const x = flagObj[flagKey];
  flagObj[flagKey] = true;
}
function ASSERT_EXISTS(obj) {
  if (obj === void 0) {
    throw Error("Internal Error - Should never get here!");
  }
  return true;
}
function ASSERT_NEVER_REACH_HERE() {
  throw Error("Internal Error - Should never get here!");
}
function isCharacter(obj) {
  return obj["type"] === "Character";
}

// node_modules/@chevrotain/regexp-to-ast/lib/src/character-classes.js
var digitsCharCodes = [];
for (let i = cc("0"); i <= cc("9"); i++) {
  digitsCharCodes.push(i);
}
var wordCharCodes = [cc("_")].concat(digitsCharCodes);
for (let i = cc("a"); i <= cc("z"); i++) {
  wordCharCodes.push(i);
}
for (let i = cc("A"); i <= cc("Z"); i++) {
  wordCharCodes.push(i);
}
var whitespaceCodes = [
  cc(" "),
  cc("\f"),
  cc("\n"),
  cc("\r"),
  cc("	"),
  cc("\v"),
  cc("	"),
  cc("\xA0"),
  cc("\u1680"),
  cc("\u2000"),
  cc("\u2001"),
  cc("\u2002"),
  cc("\u2003"),
  cc("\u2004"),
  cc("\u2005"),
  cc("\u2006"),
  cc("\u2007"),
  cc("\u2008"),
  cc("\u2009"),
  cc("\u200A"),
  cc("\u2028"),
  cc("\u2029"),
  cc("\u202F"),
  cc("\u205F"),
  cc("\u3000"),
  cc("\uFEFF")
];

// node_modules/@chevrotain/regexp-to-ast/lib/src/regexp-parser.js
var hexDigitPattern = /[0-9a-fA-F]/;
var decimalPattern = /[0-9]/;
var decimalPatternNoZero = /[1-9]/;
var RegExpParser = class {
  constructor() {
    this.idx = 0;
    this.input = "";
    this.groupIdx = 0;
  }
  saveState() {
    return {
      idx: this.idx,
      input: this.input,
      groupIdx: this.groupIdx
    };
  }
  restoreState(newState) {
    this.idx = newState.idx;
    this.input = newState.input;
    this.groupIdx = newState.groupIdx;
  }
  pattern(input) {
    this.idx = 0;
    this.input = input;
    this.groupIdx = 0;
    this.consumeChar("/");
    const value2 = this.disjunction();
    this.consumeChar("/");
    const flags = {
      type: "Flags",
      loc: { begin: this.idx, end: input.length },
      global: false,
      ignoreCase: false,
      multiLine: false,
      unicode: false,
      sticky: false
    };
    while (this.isRegExpFlag()) {
      switch (this.popChar()) {
        case "g":
          addFlag(flags, "global");
          break;
        case "i":
          addFlag(flags, "ignoreCase");
          break;
        case "m":
          addFlag(flags, "multiLine");
          break;
        case "u":
          addFlag(flags, "unicode");
          break;
        case "y":
          addFlag(flags, "sticky");
          break;
      }
    }
    if (this.idx !== this.input.length) {
      throw Error("Redundant input: " + this.input.substring(this.idx));
    }
    return {
      type: "Pattern",
      flags,
      value: value2,
      loc: this.loc(0)
    };
  }
  disjunction() {
    const alts = [];
    const begin = this.idx;
    alts.push(this.alternative());
    while (this.peekChar() === "|") {
      this.consumeChar("|");
      alts.push(this.alternative());
    }
    return { type: "Disjunction", value: alts, loc: this.loc(begin) };
  }
  alternative() {
    const terms = [];
    const begin = this.idx;
    while (this.isTerm()) {
      terms.push(this.term());
    }
    return { type: "Alternative", value: terms, loc: this.loc(begin) };
  }
  term() {
    if (this.isAssertion()) {
      return this.assertion();
    } else {
      return this.atom();
    }
  }
  assertion() {
    const begin = this.idx;
    switch (this.popChar()) {
      case "^":
        return {
          type: "StartAnchor",
          loc: this.loc(begin)
        };
      case "$":
        return { type: "EndAnchor", loc: this.loc(begin) };
      // '\b' or '\B'
      case "\\":
        switch (this.popChar()) {
          case "b":
            return {
              type: "WordBoundary",
              loc: this.loc(begin)
            };
          case "B":
            return {
              type: "NonWordBoundary",
              loc: this.loc(begin)
            };
        }
        throw Error("Invalid Assertion Escape");
      // '(?=' or '(?!'
      case "(":
        this.consumeChar("?");
        let type;
        switch (this.popChar()) {
          case "=":
            type = "Lookahead";
            break;
          case "!":
            type = "NegativeLookahead";
            break;
          case "<": {
            switch (this.popChar()) {
              case "=":
                type = "Lookbehind";
                break;
              case "!":
                type = "NegativeLookbehind";
            }
            break;
          }
        }
        ASSERT_EXISTS(type);
        const disjunction = this.disjunction();
        this.consumeChar(")");
        return {
          type,
          value: disjunction,
          loc: this.loc(begin)
        };
    }
    return ASSERT_NEVER_REACH_HERE();
  }
  quantifier(isBacktracking = false) {
    let range = void 0;
    const begin = this.idx;
    switch (this.popChar()) {
      case "*":
        range = {
          atLeast: 0,
          atMost: Infinity
        };
        break;
      case "+":
        range = {
          atLeast: 1,
          atMost: Infinity
        };
        break;
      case "?":
        range = {
          atLeast: 0,
          atMost: 1
        };
        break;
      case "{":
        const atLeast = this.integerIncludingZero();
        switch (this.popChar()) {
          case "}":
            range = {
              atLeast,
              atMost: atLeast
            };
            break;
          case ",":
            let atMost;
            if (this.isDigit()) {
              atMost = this.integerIncludingZero();
              range = {
                atLeast,
                atMost
              };
            } else {
              range = {
                atLeast,
                atMost: Infinity
              };
            }
            this.consumeChar("}");
            break;
        }
        if (isBacktracking === true && range === void 0) {
          return void 0;
        }
        ASSERT_EXISTS(range);
        break;
    }
    if (isBacktracking === true && range === void 0) {
      return void 0;
    }
    if (ASSERT_EXISTS(range)) {
      if (this.peekChar(0) === "?") {
        this.consumeChar("?");
        range.greedy = false;
      } else {
        range.greedy = true;
      }
      range.type = "Quantifier";
      range.loc = this.loc(begin);
      return range;
    }
  }
  atom() {
    let atom;
    const begin = this.idx;
    switch (this.peekChar()) {
      case ".":
        atom = this.dotAll();
        break;
      case "\\":
        atom = this.atomEscape();
        break;
      case "[":
        atom = this.characterClass();
        break;
      case "(":
        atom = this.group();
        break;
    }
    if (atom === void 0 && this.isPatternCharacter()) {
      atom = this.patternCharacter();
    }
    if (ASSERT_EXISTS(atom)) {
      atom.loc = this.loc(begin);
      if (this.isQuantifier()) {
        atom.quantifier = this.quantifier();
      }
      return atom;
    }
    return ASSERT_NEVER_REACH_HERE();
  }
  dotAll() {
    this.consumeChar(".");
    return {
      type: "Set",
      complement: true,
      value: [cc("\n"), cc("\r"), cc("\u2028"), cc("\u2029")]
    };
  }
  atomEscape() {
    this.consumeChar("\\");
    switch (this.peekChar()) {
      case "1":
      case "2":
      case "3":
      case "4":
      case "5":
      case "6":
      case "7":
      case "8":
      case "9":
        return this.decimalEscapeAtom();
      case "d":
      case "D":
      case "s":
      case "S":
      case "w":
      case "W":
        return this.characterClassEscape();
      case "f":
      case "n":
      case "r":
      case "t":
      case "v":
        return this.controlEscapeAtom();
      case "c":
        return this.controlLetterEscapeAtom();
      case "0":
        return this.nulCharacterAtom();
      case "x":
        return this.hexEscapeSequenceAtom();
      case "u":
        return this.regExpUnicodeEscapeSequenceAtom();
      default:
        return this.identityEscapeAtom();
    }
  }
  decimalEscapeAtom() {
    const value2 = this.positiveInteger();
    return { type: "GroupBackReference", value: value2 };
  }
  characterClassEscape() {
    let set;
    let complement = false;
    switch (this.popChar()) {
      case "d":
        set = digitsCharCodes;
        break;
      case "D":
        set = digitsCharCodes;
        complement = true;
        break;
      case "s":
        set = whitespaceCodes;
        break;
      case "S":
        set = whitespaceCodes;
        complement = true;
        break;
      case "w":
        set = wordCharCodes;
        break;
      case "W":
        set = wordCharCodes;
        complement = true;
        break;
    }
    if (ASSERT_EXISTS(set)) {
      return { type: "Set", value: set, complement };
    }
    return ASSERT_NEVER_REACH_HERE();
  }
  controlEscapeAtom() {
    let escapeCode;
    switch (this.popChar()) {
      case "f":
        escapeCode = cc("\f");
        break;
      case "n":
        escapeCode = cc("\n");
        break;
      case "r":
        escapeCode = cc("\r");
        break;
      case "t":
        escapeCode = cc("	");
        break;
      case "v":
        escapeCode = cc("\v");
        break;
    }
    if (ASSERT_EXISTS(escapeCode)) {
      return { type: "Character", value: escapeCode };
    }
    return ASSERT_NEVER_REACH_HERE();
  }
  controlLetterEscapeAtom() {
    this.consumeChar("c");
    const letter = this.popChar();
    if (/[a-zA-Z]/.test(letter) === false) {
      throw Error("Invalid ");
    }
    const letterCode = letter.toUpperCase().charCodeAt(0) - 64;
    return { type: "Character", value: letterCode };
  }
  nulCharacterAtom() {
    this.consumeChar("0");
    return { type: "Character", value: cc("\0") };
  }
  hexEscapeSequenceAtom() {
    this.consumeChar("x");
    return this.parseHexDigits(2);
  }
  regExpUnicodeEscapeSequenceAtom() {
    this.consumeChar("u");
    return this.parseHexDigits(4);
  }
  identityEscapeAtom() {
    const escapedChar = this.popChar();
    return { type: "Character", value: cc(escapedChar) };
  }
  classPatternCharacterAtom() {
    switch (this.peekChar()) {
      // istanbul ignore next
      case "\n":
      // istanbul ignore next
      case "\r":
      // istanbul ignore next
      case "\u2028":
      // istanbul ignore next
      case "\u2029":
      // istanbul ignore next
      case "\\":
      // istanbul ignore next
      case "]":
        throw Error("TBD");
      default:
        const nextChar = this.popChar();
        return { type: "Character", value: cc(nextChar) };
    }
  }
  characterClass() {
    const set = [];
    let complement = false;
    this.consumeChar("[");
    if (this.peekChar(0) === "^") {
      this.consumeChar("^");
      complement = true;
    }
    while (this.isClassAtom()) {
      const from2 = this.classAtom();
      const isFromSingleChar = from2.type === "Character";
      if (isCharacter(from2) && this.isRangeDash()) {
        this.consumeChar("-");
        const to2 = this.classAtom();
        const isToSingleChar = to2.type === "Character";
        if (isCharacter(to2)) {
          if (to2.value < from2.value) {
            throw Error("Range out of order in character class");
          }
          set.push({ from: from2.value, to: to2.value });
        } else {
          insertToSet(from2.value, set);
          set.push(cc("-"));
          insertToSet(to2.value, set);
        }
      } else {
        insertToSet(from2.value, set);
      }
    }
    this.consumeChar("]");
    return { type: "Set", complement, value: set };
  }
  classAtom() {
    switch (this.peekChar()) {
      // istanbul ignore next
      case "]":
      // istanbul ignore next
      case "\n":
      // istanbul ignore next
      case "\r":
      // istanbul ignore next
      case "\u2028":
      // istanbul ignore next
      case "\u2029":
        throw Error("TBD");
      case "\\":
        return this.classEscape();
      default:
        return this.classPatternCharacterAtom();
    }
  }
  classEscape() {
    this.consumeChar("\\");
    switch (this.peekChar()) {
      // Matches a backspace.
      // (Not to be confused with \b word boundary outside characterClass)
      case "b":
        this.consumeChar("b");
        return { type: "Character", value: cc("\b") };
      case "d":
      case "D":
      case "s":
      case "S":
      case "w":
      case "W":
        return this.characterClassEscape();
      case "f":
      case "n":
      case "r":
      case "t":
      case "v":
        return this.controlEscapeAtom();
      case "c":
        return this.controlLetterEscapeAtom();
      case "0":
        return this.nulCharacterAtom();
      case "x":
        return this.hexEscapeSequenceAtom();
      case "u":
        return this.regExpUnicodeEscapeSequenceAtom();
      default:
        return this.identityEscapeAtom();
    }
  }
  group() {
    let capturing = true;
    this.consumeChar("(");
    switch (this.peekChar(0)) {
      case "?":
        this.consumeChar("?");
        this.consumeChar(":");
        capturing = false;
        break;
      default:
        this.groupIdx++;
        break;
    }
    const value2 = this.disjunction();
    this.consumeChar(")");
    const groupAst = {
      type: "Group",
      capturing,
      value: value2
    };
    if (capturing) {
      groupAst["idx"] = this.groupIdx;
    }
    return groupAst;
  }
  positiveInteger() {
    let number = this.popChar();
    if (decimalPatternNoZero.test(number) === false) {
      throw Error("Expecting a positive integer");
    }
    while (decimalPattern.test(this.peekChar(0))) {
      number += this.popChar();
    }
    return parseInt(number, 10);
  }
  integerIncludingZero() {
    let number = this.popChar();
    if (decimalPattern.test(number) === false) {
      throw Error("Expecting an integer");
    }
    while (decimalPattern.test(this.peekChar(0))) {
      number += this.popChar();
    }
    return parseInt(number, 10);
  }
  patternCharacter() {
    const nextChar = this.popChar();
    switch (nextChar) {
      // istanbul ignore next
      case "\n":
      // istanbul ignore next
      case "\r":
      // istanbul ignore next
      case "\u2028":
      // istanbul ignore next
      case "\u2029":
      // istanbul ignore next
      case "^":
      // istanbul ignore next
      case "$":
      // istanbul ignore next
      case "\\":
      // istanbul ignore next
      case ".":
      // istanbul ignore next
      case "*":
      // istanbul ignore next
      case "+":
      // istanbul ignore next
      case "?":
      // istanbul ignore next
      case "(":
      // istanbul ignore next
      case ")":
      // istanbul ignore next
      case "[":
      // istanbul ignore next
      case "|":
        throw Error("TBD");
      default:
        return { type: "Character", value: cc(nextChar) };
    }
  }
  isRegExpFlag() {
    switch (this.peekChar(0)) {
      case "g":
      case "i":
      case "m":
      case "u":
      case "y":
        return true;
      default:
        return false;
    }
  }
  isRangeDash() {
    return this.peekChar() === "-" && this.isClassAtom(1);
  }
  isDigit() {
    return decimalPattern.test(this.peekChar(0));
  }
  isClassAtom(howMuch = 0) {
    switch (this.peekChar(howMuch)) {
      case "]":
      case "\n":
      case "\r":
      case "\u2028":
      case "\u2029":
        return false;
      default:
        return true;
    }
  }
  isTerm() {
    return this.isAtom() || this.isAssertion();
  }
  isAtom() {
    if (this.isPatternCharacter()) {
      return true;
    }
    switch (this.peekChar(0)) {
      case ".":
      case "\\":
      // atomEscape
      case "[":
      // characterClass
      // TODO: isAtom must be called before isAssertion - disambiguate
      case "(":
        return true;
      default:
        return false;
    }
  }
  isAssertion() {
    switch (this.peekChar(0)) {
      case "^":
      case "$":
        return true;
      // '\b' or '\B'
      case "\\":
        switch (this.peekChar(1)) {
          case "b":
          case "B":
            return true;
          default:
            return false;
        }
      // '(?=' or '(?!' or `(?<=` or `(?<!`
      case "(":
        return this.peekChar(1) === "?" && (this.peekChar(2) === "=" || this.peekChar(2) === "!" || this.peekChar(2) === "<" && (this.peekChar(3) === "=" || this.peekChar(3) === "!"));
      default:
        return false;
    }
  }
  isQuantifier() {
    const prevState = this.saveState();
    try {
      return this.quantifier(true) !== void 0;
    } catch (e) {
      return false;
    } finally {
      this.restoreState(prevState);
    }
  }
  isPatternCharacter() {
    switch (this.peekChar()) {
      case "^":
      case "$":
      case "\\":
      case ".":
      case "*":
      case "+":
      case "?":
      case "(":
      case ")":
      case "[":
      case "|":
      case "/":
      case "\n":
      case "\r":
      case "\u2028":
      case "\u2029":
        return false;
      default:
        return true;
    }
  }
  parseHexDigits(howMany) {
    let hexString = "";
    for (let i = 0; i < howMany; i++) {
      const hexChar = this.popChar();
      if (hexDigitPattern.test(hexChar) === false) {
        throw Error("Expecting a HexDecimal digits");
      }
      hexString += hexChar;
    }
    const charCode = parseInt(hexString, 16);
    return { type: "Character", value: charCode };
  }
  peekChar(howMuch = 0) {
    return this.input[this.idx + howMuch];
  }
  popChar() {
    const nextChar = this.peekChar(0);
    this.consumeChar(void 0);
    return nextChar;
  }
  consumeChar(char) {
    if (char !== void 0 && this.input[this.idx] !== char) {
      throw Error("Expected: '" + char + "' but found: '" + this.input[this.idx] + "' at offset: " + this.idx);
    }
    if (this.idx >= this.input.length) {
      throw Error("Unexpected end of input");
    }
    this.idx++;
  }
  loc(begin) {
    return { begin, end: this.idx };
  }
};

// node_modules/@chevrotain/regexp-to-ast/lib/src/base-regexp-visitor.js
var BaseRegExpVisitor = class {
  visitChildren(node) {
    for (const key in node) {
      const child = node[key];
      if (node.hasOwnProperty(key)) {
        if (child.type !== void 0) {
          this.visit(child);
        } else if (Array.isArray(child)) {
          child.forEach((subChild) => {
            this.visit(subChild);
          }, this);
        }
      }
    }
  }
  visit(node) {
    switch (node.type) {
      case "Pattern":
        this.visitPattern(node);
        break;
      case "Flags":
        this.visitFlags(node);
        break;
      case "Disjunction":
        this.visitDisjunction(node);
        break;
      case "Alternative":
        this.visitAlternative(node);
        break;
      case "StartAnchor":
        this.visitStartAnchor(node);
        break;
      case "EndAnchor":
        this.visitEndAnchor(node);
        break;
      case "WordBoundary":
        this.visitWordBoundary(node);
        break;
      case "NonWordBoundary":
        this.visitNonWordBoundary(node);
        break;
      case "Lookahead":
        this.visitLookahead(node);
        break;
      case "NegativeLookahead":
        this.visitNegativeLookahead(node);
        break;
      case "Lookbehind":
        this.visitLookbehind(node);
        break;
      case "NegativeLookbehind":
        this.visitNegativeLookbehind(node);
        break;
      case "Character":
        this.visitCharacter(node);
        break;
      case "Set":
        this.visitSet(node);
        break;
      case "Group":
        this.visitGroup(node);
        break;
      case "GroupBackReference":
        this.visitGroupBackReference(node);
        break;
      case "Quantifier":
        this.visitQuantifier(node);
        break;
    }
    this.visitChildren(node);
  }
  visitPattern(node) {
  }
  visitFlags(node) {
  }
  visitDisjunction(node) {
  }
  visitAlternative(node) {
  }
  // Assertion
  visitStartAnchor(node) {
  }
  visitEndAnchor(node) {
  }
  visitWordBoundary(node) {
  }
  visitNonWordBoundary(node) {
  }
  visitLookahead(node) {
  }
  visitNegativeLookahead(node) {
  }
  visitLookbehind(node) {
  }
  visitNegativeLookbehind(node) {
  }
  // atoms
  visitCharacter(node) {
  }
  visitSet(node) {
  }
  visitGroup(node) {
  }
  visitGroupBackReference(node) {
  }
  visitQuantifier(node) {
  }
};

// node_modules/chevrotain/lib/src/scan/reg_exp_parser.js
var regExpAstCache = {};
var regExpParser = new RegExpParser();
function getRegExpAst(regExp) {
  const regExpStr = regExp.toString();
  if (regExpAstCache.hasOwnProperty(regExpStr)) {
    return regExpAstCache[regExpStr];
  } else {
    const regExpAst = regExpParser.pattern(regExpStr);
    regExpAstCache[regExpStr] = regExpAst;
    return regExpAst;
  }
}
function clearRegExpParserCache() {
  regExpAstCache = {};
}

// node_modules/chevrotain/lib/src/scan/reg_exp.js
var complementErrorMessage = "Complement Sets are not supported for first char optimization";
var failedOptimizationPrefixMsg = 'Unable to use "first char" lexer optimizations:\n';
function getOptimizedStartCodesIndices(regExp, ensureOptimizations = false) {
  try {
    const ast = getRegExpAst(regExp);
    const firstChars = firstCharOptimizedIndices(ast.value, {}, ast.flags.ignoreCase);
    return firstChars;
  } catch (e) {
    if (e.message === complementErrorMessage) {
      if (ensureOptimizations) {
        PRINT_WARNING(`${failedOptimizationPrefixMsg}	Unable to optimize: < ${regExp.toString()} >
	Complement Sets cannot be automatically optimized.
	This will disable the lexer's first char optimizations.
	See: https://chevrotain.io/docs/guide/resolving_lexer_errors.html#COMPLEMENT for details.`);
      }
    } else {
      let msgSuffix = "";
      if (ensureOptimizations) {
        msgSuffix = "\n	This will disable the lexer's first char optimizations.\n	See: https://chevrotain.io/docs/guide/resolving_lexer_errors.html#REGEXP_PARSING for details.";
      }
      PRINT_ERROR(`${failedOptimizationPrefixMsg}
	Failed parsing: < ${regExp.toString()} >
	Using the @chevrotain/regexp-to-ast library
	Please open an issue at: https://github.com/chevrotain/chevrotain/issues` + msgSuffix);
    }
  }
  return [];
}
function firstCharOptimizedIndices(ast, result, ignoreCase) {
  switch (ast.type) {
    case "Disjunction":
      for (let i = 0; i < ast.value.length; i++) {
        firstCharOptimizedIndices(ast.value[i], result, ignoreCase);
      }
      break;
    case "Alternative":
      const terms = ast.value;
      for (let i = 0; i < terms.length; i++) {
        const term = terms[i];
        switch (term.type) {
          case "EndAnchor":
          // A group back reference cannot affect potential starting char.
          // because if a back reference is the first production than automatically
          // the group being referenced has had to come BEFORE so its codes have already been added
          case "GroupBackReference":
          // assertions do not affect potential starting codes
          case "Lookahead":
          case "NegativeLookahead":
          case "Lookbehind":
          case "NegativeLookbehind":
          case "StartAnchor":
          case "WordBoundary":
          case "NonWordBoundary":
            continue;
        }
        const atom = term;
        switch (atom.type) {
          case "Character":
            addOptimizedIdxToResult(atom.value, result, ignoreCase);
            break;
          case "Set":
            if (atom.complement === true) {
              throw Error(complementErrorMessage);
            }
            forEach_default(atom.value, (code) => {
              if (typeof code === "number") {
                addOptimizedIdxToResult(code, result, ignoreCase);
              } else {
                const range = code;
                if (ignoreCase === true) {
                  for (let rangeCode = range.from; rangeCode <= range.to; rangeCode++) {
                    addOptimizedIdxToResult(rangeCode, result, ignoreCase);
                  }
                } else {
                  for (let rangeCode = range.from; rangeCode <= range.to && rangeCode < minOptimizationVal; rangeCode++) {
                    addOptimizedIdxToResult(rangeCode, result, ignoreCase);
                  }
                  if (range.to >= minOptimizationVal) {
                    const minUnOptVal = range.from >= minOptimizationVal ? range.from : minOptimizationVal;
                    const maxUnOptVal = range.to;
                    const minOptIdx = charCodeToOptimizedIndex(minUnOptVal);
                    const maxOptIdx = charCodeToOptimizedIndex(maxUnOptVal);
                    for (let currOptIdx = minOptIdx; currOptIdx <= maxOptIdx; currOptIdx++) {
                      result[currOptIdx] = currOptIdx;
                    }
                  }
                }
              }
            });
            break;
          case "Group":
            firstCharOptimizedIndices(atom.value, result, ignoreCase);
            break;
          /* istanbul ignore next */
          default:
            throw Error("Non Exhaustive Match");
        }
        const isOptionalQuantifier = atom.quantifier !== void 0 && atom.quantifier.atLeast === 0;
        if (
          // A group may be optional due to empty contents /(?:)/
          // or if everything inside it is optional /((a)?)/
          atom.type === "Group" && isWholeOptional(atom) === false || // If this term is not a group it may only be optional if it has an optional quantifier
          atom.type !== "Group" && isOptionalQuantifier === false
        ) {
          break;
        }
      }
      break;
    /* istanbul ignore next */
    default:
      throw Error("non exhaustive match!");
  }
  return values_default(result);
}
function addOptimizedIdxToResult(code, result, ignoreCase) {
  const optimizedCharIdx = charCodeToOptimizedIndex(code);
  result[optimizedCharIdx] = optimizedCharIdx;
  if (ignoreCase === true) {
    handleIgnoreCase(code, result);
  }
}
function handleIgnoreCase(code, result) {
  const char = String.fromCharCode(code);
  const upperChar = char.toUpperCase();
  if (upperChar !== char) {
    const optimizedCharIdx = charCodeToOptimizedIndex(upperChar.charCodeAt(0));
    result[optimizedCharIdx] = optimizedCharIdx;
  } else {
    const lowerChar = char.toLowerCase();
    if (lowerChar !== char) {
      const optimizedCharIdx = charCodeToOptimizedIndex(lowerChar.charCodeAt(0));
      result[optimizedCharIdx] = optimizedCharIdx;
    }
  }
}
function findCode(setNode, targetCharCodes) {
  return find_default(setNode.value, (codeOrRange) => {
    if (typeof codeOrRange === "number") {
      return includes_default(targetCharCodes, codeOrRange);
    } else {
      const range = codeOrRange;
      return find_default(targetCharCodes, (targetCode) => range.from <= targetCode && targetCode <= range.to) !== void 0;
    }
  });
}
function isWholeOptional(ast) {
  const quantifier = ast.quantifier;
  if (quantifier && quantifier.atLeast === 0) {
    return true;
  }
  if (!ast.value) {
    return false;
  }
  return isArray_default(ast.value) ? every_default(ast.value, isWholeOptional) : isWholeOptional(ast.value);
}
var CharCodeFinder = class extends BaseRegExpVisitor {
  constructor(targetCharCodes) {
    super();
    this.targetCharCodes = targetCharCodes;
    this.found = false;
  }
  visitChildren(node) {
    if (this.found === true) {
      return;
    }
    switch (node.type) {
      case "Lookahead":
        this.visitLookahead(node);
        return;
      case "NegativeLookahead":
        this.visitNegativeLookahead(node);
        return;
      case "Lookbehind":
        this.visitLookbehind(node);
        return;
      case "NegativeLookbehind":
        this.visitNegativeLookbehind(node);
        return;
    }
    super.visitChildren(node);
  }
  visitCharacter(node) {
    if (includes_default(this.targetCharCodes, node.value)) {
      this.found = true;
    }
  }
  visitSet(node) {
    if (node.complement) {
      if (findCode(node, this.targetCharCodes) === void 0) {
        this.found = true;
      }
    } else {
      if (findCode(node, this.targetCharCodes) !== void 0) {
        this.found = true;
      }
    }
  }
};
function canMatchCharCode(charCodes, pattern) {
  if (pattern instanceof RegExp) {
    const ast = getRegExpAst(pattern);
    const charCodeFinder = new CharCodeFinder(charCodes);
    charCodeFinder.visit(ast);
    return charCodeFinder.found;
  } else {
    return find_default(pattern, (char) => {
      return includes_default(charCodes, char.charCodeAt(0));
    }) !== void 0;
  }
}

// node_modules/chevrotain/lib/src/scan/lexer.js
var PATTERN = "PATTERN";
var DEFAULT_MODE = "defaultMode";
var MODES = "modes";
function analyzeTokenTypes(tokenTypes, options2) {
  options2 = defaults_default(options2, {
    debug: false,
    safeMode: false,
    positionTracking: "full",
    lineTerminatorCharacters: ["\r", "\n"],
    tracer: (msg, action) => action()
  });
  const tracer = options2.tracer;
  tracer("initCharCodeToOptimizedIndexMap", () => {
    initCharCodeToOptimizedIndexMap();
  });
  let onlyRelevantTypes;
  tracer("Reject Lexer.NA", () => {
    onlyRelevantTypes = reject_default(tokenTypes, (currType) => {
      return currType[PATTERN] === Lexer.NA;
    });
  });
  let hasCustom = false;
  let allTransformedPatterns;
  tracer("Transform Patterns", () => {
    hasCustom = false;
    allTransformedPatterns = map_default(onlyRelevantTypes, (currType) => {
      const currPattern = currType[PATTERN];
      if (isRegExp_default(currPattern)) {
        const regExpSource = currPattern.source;
        if (regExpSource.length === 1 && // only these regExp meta characters which can appear in a length one regExp
        regExpSource !== "^" && regExpSource !== "$" && regExpSource !== "." && !currPattern.ignoreCase) {
          return regExpSource;
        } else if (regExpSource.length === 2 && regExpSource[0] === "\\" && // not a meta character
        !includes_default([
          "d",
          "D",
          "s",
          "S",
          "t",
          "r",
          "n",
          "t",
          "0",
          "c",
          "b",
          "B",
          "f",
          "v",
          "w",
          "W"
        ], regExpSource[1])) {
          return regExpSource[1];
        } else {
          return addStickyFlag(currPattern);
        }
      } else if (isFunction_default(currPattern)) {
        hasCustom = true;
        return { exec: currPattern };
      } else if (typeof currPattern === "object") {
        hasCustom = true;
        return currPattern;
      } else if (typeof currPattern === "string") {
        if (currPattern.length === 1) {
          return currPattern;
        } else {
          const escapedRegExpString = currPattern.replace(/[\\^$.*+?()[\]{}|]/g, "\\$&");
          const wrappedRegExp = new RegExp(escapedRegExpString);
          return addStickyFlag(wrappedRegExp);
        }
      } else {
        throw Error("non exhaustive match");
      }
    });
  });
  let patternIdxToType;
  let patternIdxToGroup;
  let patternIdxToLongerAltIdxArr;
  let patternIdxToPushMode;
  let patternIdxToPopMode;
  tracer("misc mapping", () => {
    patternIdxToType = map_default(onlyRelevantTypes, (currType) => currType.tokenTypeIdx);
    patternIdxToGroup = map_default(onlyRelevantTypes, (clazz) => {
      const groupName = clazz.GROUP;
      if (groupName === Lexer.SKIPPED) {
        return void 0;
      } else if (isString_default(groupName)) {
        return groupName;
      } else if (isUndefined_default(groupName)) {
        return false;
      } else {
        throw Error("non exhaustive match");
      }
    });
    patternIdxToLongerAltIdxArr = map_default(onlyRelevantTypes, (clazz) => {
      const longerAltType = clazz.LONGER_ALT;
      if (longerAltType) {
        const longerAltIdxArr = isArray_default(longerAltType) ? map_default(longerAltType, (type) => indexOf_default(onlyRelevantTypes, type)) : [indexOf_default(onlyRelevantTypes, longerAltType)];
        return longerAltIdxArr;
      }
    });
    patternIdxToPushMode = map_default(onlyRelevantTypes, (clazz) => clazz.PUSH_MODE);
    patternIdxToPopMode = map_default(onlyRelevantTypes, (clazz) => has_default(clazz, "POP_MODE"));
  });
  let patternIdxToCanLineTerminator;
  tracer("Line Terminator Handling", () => {
    const lineTerminatorCharCodes = getCharCodes(options2.lineTerminatorCharacters);
    patternIdxToCanLineTerminator = map_default(onlyRelevantTypes, (tokType) => false);
    if (options2.positionTracking !== "onlyOffset") {
      patternIdxToCanLineTerminator = map_default(onlyRelevantTypes, (tokType) => {
        if (has_default(tokType, "LINE_BREAKS")) {
          return !!tokType.LINE_BREAKS;
        } else {
          return checkLineBreaksIssues(tokType, lineTerminatorCharCodes) === false && canMatchCharCode(lineTerminatorCharCodes, tokType.PATTERN);
        }
      });
    }
  });
  let patternIdxToIsCustom;
  let patternIdxToShort;
  let emptyGroups;
  let patternIdxToConfig;
  tracer("Misc Mapping #2", () => {
    patternIdxToIsCustom = map_default(onlyRelevantTypes, isCustomPattern);
    patternIdxToShort = map_default(allTransformedPatterns, isShortPattern);
    emptyGroups = reduce_default(onlyRelevantTypes, (acc, clazz) => {
      const groupName = clazz.GROUP;
      if (isString_default(groupName) && !(groupName === Lexer.SKIPPED)) {
        acc[groupName] = [];
      }
      return acc;
    }, {});
    patternIdxToConfig = map_default(allTransformedPatterns, (x, idx) => {
      return {
        pattern: allTransformedPatterns[idx],
        longerAlt: patternIdxToLongerAltIdxArr[idx],
        canLineTerminator: patternIdxToCanLineTerminator[idx],
        isCustom: patternIdxToIsCustom[idx],
        short: patternIdxToShort[idx],
        group: patternIdxToGroup[idx],
        push: patternIdxToPushMode[idx],
        pop: patternIdxToPopMode[idx],
        tokenTypeIdx: patternIdxToType[idx],
        tokenType: onlyRelevantTypes[idx]
      };
    });
  });
  let canBeOptimized = true;
  let charCodeToPatternIdxToConfig = [];
  if (!options2.safeMode) {
    tracer("First Char Optimization", () => {
      charCodeToPatternIdxToConfig = reduce_default(onlyRelevantTypes, (result, currTokType, idx) => {
        if (typeof currTokType.PATTERN === "string") {
          const charCode = currTokType.PATTERN.charCodeAt(0);
          const optimizedIdx = charCodeToOptimizedIndex(charCode);
          addToMapOfArrays(result, optimizedIdx, patternIdxToConfig[idx]);
        } else if (isArray_default(currTokType.START_CHARS_HINT)) {
          let lastOptimizedIdx;
          forEach_default(currTokType.START_CHARS_HINT, (charOrInt) => {
            const charCode = typeof charOrInt === "string" ? charOrInt.charCodeAt(0) : charOrInt;
            const currOptimizedIdx = charCodeToOptimizedIndex(charCode);
            if (lastOptimizedIdx !== currOptimizedIdx) {
              lastOptimizedIdx = currOptimizedIdx;
              addToMapOfArrays(result, currOptimizedIdx, patternIdxToConfig[idx]);
            }
          });
        } else if (isRegExp_default(currTokType.PATTERN)) {
          if (currTokType.PATTERN.unicode) {
            canBeOptimized = false;
            if (options2.ensureOptimizations) {
              PRINT_ERROR(`${failedOptimizationPrefixMsg}	Unable to analyze < ${currTokType.PATTERN.toString()} > pattern.
	The regexp unicode flag is not currently supported by the regexp-to-ast library.
	This will disable the lexer's first char optimizations.
	For details See: https://chevrotain.io/docs/guide/resolving_lexer_errors.html#UNICODE_OPTIMIZE`);
            }
          } else {
            const optimizedCodes = getOptimizedStartCodesIndices(currTokType.PATTERN, options2.ensureOptimizations);
            if (isEmpty_default(optimizedCodes)) {
              canBeOptimized = false;
            }
            forEach_default(optimizedCodes, (code) => {
              addToMapOfArrays(result, code, patternIdxToConfig[idx]);
            });
          }
        } else {
          if (options2.ensureOptimizations) {
            PRINT_ERROR(`${failedOptimizationPrefixMsg}	TokenType: <${currTokType.name}> is using a custom token pattern without providing <start_chars_hint> parameter.
	This will disable the lexer's first char optimizations.
	For details See: https://chevrotain.io/docs/guide/resolving_lexer_errors.html#CUSTOM_OPTIMIZE`);
          }
          canBeOptimized = false;
        }
        return result;
      }, []);
    });
  }
  return {
    emptyGroups,
    patternIdxToConfig,
    charCodeToPatternIdxToConfig,
    hasCustom,
    canBeOptimized
  };
}
function validatePatterns(tokenTypes, validModesNames) {
  let errors = [];
  const missingResult = findMissingPatterns(tokenTypes);
  errors = errors.concat(missingResult.errors);
  const invalidResult = findInvalidPatterns(missingResult.valid);
  const validTokenTypes = invalidResult.valid;
  errors = errors.concat(invalidResult.errors);
  errors = errors.concat(validateRegExpPattern(validTokenTypes));
  errors = errors.concat(findInvalidGroupType(validTokenTypes));
  errors = errors.concat(findModesThatDoNotExist(validTokenTypes, validModesNames));
  errors = errors.concat(findUnreachablePatterns(validTokenTypes));
  return errors;
}
function validateRegExpPattern(tokenTypes) {
  let errors = [];
  const withRegExpPatterns = filter_default(tokenTypes, (currTokType) => isRegExp_default(currTokType[PATTERN]));
  errors = errors.concat(findEndOfInputAnchor(withRegExpPatterns));
  errors = errors.concat(findStartOfInputAnchor(withRegExpPatterns));
  errors = errors.concat(findUnsupportedFlags(withRegExpPatterns));
  errors = errors.concat(findDuplicatePatterns(withRegExpPatterns));
  errors = errors.concat(findEmptyMatchRegExps(withRegExpPatterns));
  return errors;
}
function findMissingPatterns(tokenTypes) {
  const tokenTypesWithMissingPattern = filter_default(tokenTypes, (currType) => {
    return !has_default(currType, PATTERN);
  });
  const errors = map_default(tokenTypesWithMissingPattern, (currType) => {
    return {
      message: "Token Type: ->" + currType.name + "<- missing static 'PATTERN' property",
      type: LexerDefinitionErrorType.MISSING_PATTERN,
      tokenTypes: [currType]
    };
  });
  const valid = difference_default(tokenTypes, tokenTypesWithMissingPattern);
  return { errors, valid };
}
function findInvalidPatterns(tokenTypes) {
  const tokenTypesWithInvalidPattern = filter_default(tokenTypes, (currType) => {
    const pattern = currType[PATTERN];
    return !isRegExp_default(pattern) && !isFunction_default(pattern) && !has_default(pattern, "exec") && !isString_default(pattern);
  });
  const errors = map_default(tokenTypesWithInvalidPattern, (currType) => {
    return {
      message: "Token Type: ->" + currType.name + "<- static 'PATTERN' can only be a RegExp, a Function matching the {CustomPatternMatcherFunc} type or an Object matching the {ICustomPattern} interface.",
      type: LexerDefinitionErrorType.INVALID_PATTERN,
      tokenTypes: [currType]
    };
  });
  const valid = difference_default(tokenTypes, tokenTypesWithInvalidPattern);
  return { errors, valid };
}
var end_of_input = /[^\\][$]/;
function findEndOfInputAnchor(tokenTypes) {
  class EndAnchorFinder extends BaseRegExpVisitor {
    constructor() {
      super(...arguments);
      this.found = false;
    }
    visitEndAnchor(node) {
      this.found = true;
    }
  }
  const invalidRegex = filter_default(tokenTypes, (currType) => {
    const pattern = currType.PATTERN;
    try {
      const regexpAst = getRegExpAst(pattern);
      const endAnchorVisitor = new EndAnchorFinder();
      endAnchorVisitor.visit(regexpAst);
      return endAnchorVisitor.found;
    } catch (e) {
      return end_of_input.test(pattern.source);
    }
  });
  const errors = map_default(invalidRegex, (currType) => {
    return {
      message: "Unexpected RegExp Anchor Error:\n	Token Type: ->" + currType.name + "<- static 'PATTERN' cannot contain end of input anchor '$'\n	See chevrotain.io/docs/guide/resolving_lexer_errors.html#ANCHORS	for details.",
      type: LexerDefinitionErrorType.EOI_ANCHOR_FOUND,
      tokenTypes: [currType]
    };
  });
  return errors;
}
function findEmptyMatchRegExps(tokenTypes) {
  const matchesEmptyString = filter_default(tokenTypes, (currType) => {
    const pattern = currType.PATTERN;
    return pattern.test("");
  });
  const errors = map_default(matchesEmptyString, (currType) => {
    return {
      message: "Token Type: ->" + currType.name + "<- static 'PATTERN' must not match an empty string",
      type: LexerDefinitionErrorType.EMPTY_MATCH_PATTERN,
      tokenTypes: [currType]
    };
  });
  return errors;
}
var start_of_input = /[^\\[][\^]|^\^/;
function findStartOfInputAnchor(tokenTypes) {
  class StartAnchorFinder extends BaseRegExpVisitor {
    constructor() {
      super(...arguments);
      this.found = false;
    }
    visitStartAnchor(node) {
      this.found = true;
    }
  }
  const invalidRegex = filter_default(tokenTypes, (currType) => {
    const pattern = currType.PATTERN;
    try {
      const regexpAst = getRegExpAst(pattern);
      const startAnchorVisitor = new StartAnchorFinder();
      startAnchorVisitor.visit(regexpAst);
      return startAnchorVisitor.found;
    } catch (e) {
      return start_of_input.test(pattern.source);
    }
  });
  const errors = map_default(invalidRegex, (currType) => {
    return {
      message: "Unexpected RegExp Anchor Error:\n	Token Type: ->" + currType.name + "<- static 'PATTERN' cannot contain start of input anchor '^'\n	See https://chevrotain.io/docs/guide/resolving_lexer_errors.html#ANCHORS	for details.",
      type: LexerDefinitionErrorType.SOI_ANCHOR_FOUND,
      tokenTypes: [currType]
    };
  });
  return errors;
}
function findUnsupportedFlags(tokenTypes) {
  const invalidFlags = filter_default(tokenTypes, (currType) => {
    const pattern = currType[PATTERN];
    return pattern instanceof RegExp && (pattern.multiline || pattern.global);
  });
  const errors = map_default(invalidFlags, (currType) => {
    return {
      message: "Token Type: ->" + currType.name + "<- static 'PATTERN' may NOT contain global('g') or multiline('m')",
      type: LexerDefinitionErrorType.UNSUPPORTED_FLAGS_FOUND,
      tokenTypes: [currType]
    };
  });
  return errors;
}
function findDuplicatePatterns(tokenTypes) {
  const found = [];
  let identicalPatterns = map_default(tokenTypes, (outerType) => {
    return reduce_default(tokenTypes, (result, innerType) => {
      if (outerType.PATTERN.source === innerType.PATTERN.source && !includes_default(found, innerType) && innerType.PATTERN !== Lexer.NA) {
        found.push(innerType);
        result.push(innerType);
        return result;
      }
      return result;
    }, []);
  });
  identicalPatterns = compact_default(identicalPatterns);
  const duplicatePatterns = filter_default(identicalPatterns, (currIdenticalSet) => {
    return currIdenticalSet.length > 1;
  });
  const errors = map_default(duplicatePatterns, (setOfIdentical) => {
    const tokenTypeNames = map_default(setOfIdentical, (currType) => {
      return currType.name;
    });
    const dupPatternSrc = head_default(setOfIdentical).PATTERN;
    return {
      message: `The same RegExp pattern ->${dupPatternSrc}<-has been used in all of the following Token Types: ${tokenTypeNames.join(", ")} <-`,
      type: LexerDefinitionErrorType.DUPLICATE_PATTERNS_FOUND,
      tokenTypes: setOfIdentical
    };
  });
  return errors;
}
function findInvalidGroupType(tokenTypes) {
  const invalidTypes = filter_default(tokenTypes, (clazz) => {
    if (!has_default(clazz, "GROUP")) {
      return false;
    }
    const group = clazz.GROUP;
    return group !== Lexer.SKIPPED && group !== Lexer.NA && !isString_default(group);
  });
  const errors = map_default(invalidTypes, (currType) => {
    return {
      message: "Token Type: ->" + currType.name + "<- static 'GROUP' can only be Lexer.SKIPPED/Lexer.NA/A String",
      type: LexerDefinitionErrorType.INVALID_GROUP_TYPE_FOUND,
      tokenTypes: [currType]
    };
  });
  return errors;
}
function findModesThatDoNotExist(tokenTypes, validModes) {
  const invalidModes = filter_default(tokenTypes, (clazz) => {
    return clazz.PUSH_MODE !== void 0 && !includes_default(validModes, clazz.PUSH_MODE);
  });
  const errors = map_default(invalidModes, (tokType) => {
    const msg = `Token Type: ->${tokType.name}<- static 'PUSH_MODE' value cannot refer to a Lexer Mode ->${tokType.PUSH_MODE}<-which does not exist`;
    return {
      message: msg,
      type: LexerDefinitionErrorType.PUSH_MODE_DOES_NOT_EXIST,
      tokenTypes: [tokType]
    };
  });
  return errors;
}
function findUnreachablePatterns(tokenTypes) {
  const errors = [];
  const canBeTested = reduce_default(tokenTypes, (result, tokType, idx) => {
    const pattern = tokType.PATTERN;
    if (pattern === Lexer.NA) {
      return result;
    }
    if (isString_default(pattern)) {
      result.push({ str: pattern, idx, tokenType: tokType });
    } else if (isRegExp_default(pattern) && noMetaChar(pattern)) {
      result.push({ str: pattern.source, idx, tokenType: tokType });
    }
    return result;
  }, []);
  forEach_default(tokenTypes, (aTokType, aIdx) => {
    forEach_default(canBeTested, ({ str: bStr, idx: bIdx, tokenType: bTokType }) => {
      if (aIdx < bIdx && tryToMatchStrToPattern(bStr, aTokType.PATTERN)) {
        const msg = `Token: ->${bTokType.name}<- can never be matched.
Because it appears AFTER the Token Type ->${aTokType.name}<-in the lexer's definition.
See https://chevrotain.io/docs/guide/resolving_lexer_errors.html#UNREACHABLE`;
        errors.push({
          message: msg,
          type: LexerDefinitionErrorType.UNREACHABLE_PATTERN,
          tokenTypes: [aTokType, bTokType]
        });
      }
    });
  });
  return errors;
}
function tryToMatchStrToPattern(str, pattern) {
  if (isRegExp_default(pattern)) {
    if (usesLookAheadOrBehind(pattern)) {
      return false;
    }
    const regExpArray = pattern.exec(str);
    return regExpArray !== null && regExpArray.index === 0;
  } else if (isFunction_default(pattern)) {
    return pattern(str, 0, [], {});
  } else if (has_default(pattern, "exec")) {
    return pattern.exec(str, 0, [], {});
  } else if (typeof pattern === "string") {
    return pattern === str;
  } else {
    throw Error("non exhaustive match");
  }
}
function noMetaChar(regExp) {
  const metaChars = [
    ".",
    "\\",
    "[",
    "]",
    "|",
    "^",
    "$",
    "(",
    ")",
    "?",
    "*",
    "+",
    "{"
  ];
  return find_default(metaChars, (char) => regExp.source.indexOf(char) !== -1) === void 0;
}
function usesLookAheadOrBehind(regExp) {
  return /(\(\?=)|(\(\?!)|(\(\?<=)|(\(\?<!)/.test(regExp.source);
}
function addStickyFlag(pattern) {
  const flags = pattern.ignoreCase ? "iy" : "y";
  return new RegExp(`${pattern.source}`, flags);
}
function performRuntimeChecks(lexerDefinition, trackLines, lineTerminatorCharacters) {
  const errors = [];
  if (!has_default(lexerDefinition, DEFAULT_MODE)) {
    errors.push({
      message: "A MultiMode Lexer cannot be initialized without a <" + DEFAULT_MODE + "> property in its definition\n",
      type: LexerDefinitionErrorType.MULTI_MODE_LEXER_WITHOUT_DEFAULT_MODE
    });
  }
  if (!has_default(lexerDefinition, MODES)) {
    errors.push({
      message: "A MultiMode Lexer cannot be initialized without a <" + MODES + "> property in its definition\n",
      type: LexerDefinitionErrorType.MULTI_MODE_LEXER_WITHOUT_MODES_PROPERTY
    });
  }
  if (has_default(lexerDefinition, MODES) && has_default(lexerDefinition, DEFAULT_MODE) && !has_default(lexerDefinition.modes, lexerDefinition.defaultMode)) {
    errors.push({
      message: `A MultiMode Lexer cannot be initialized with a ${DEFAULT_MODE}: <${lexerDefinition.defaultMode}>which does not exist
`,
      type: LexerDefinitionErrorType.MULTI_MODE_LEXER_DEFAULT_MODE_VALUE_DOES_NOT_EXIST
    });
  }
  if (has_default(lexerDefinition, MODES)) {
    forEach_default(lexerDefinition.modes, (currModeValue, currModeName) => {
      forEach_default(currModeValue, (currTokType, currIdx) => {
        if (isUndefined_default(currTokType)) {
          errors.push({
            message: `A Lexer cannot be initialized using an undefined Token Type. Mode:<${currModeName}> at index: <${currIdx}>
`,
            type: LexerDefinitionErrorType.LEXER_DEFINITION_CANNOT_CONTAIN_UNDEFINED
          });
        } else if (has_default(currTokType, "LONGER_ALT")) {
          const longerAlt = isArray_default(currTokType.LONGER_ALT) ? currTokType.LONGER_ALT : [currTokType.LONGER_ALT];
          forEach_default(longerAlt, (currLongerAlt) => {
            if (!isUndefined_default(currLongerAlt) && !includes_default(currModeValue, currLongerAlt)) {
              errors.push({
                message: `A MultiMode Lexer cannot be initialized with a longer_alt <${currLongerAlt.name}> on token <${currTokType.name}> outside of mode <${currModeName}>
`,
                type: LexerDefinitionErrorType.MULTI_MODE_LEXER_LONGER_ALT_NOT_IN_CURRENT_MODE
              });
            }
          });
        }
      });
    });
  }
  return errors;
}
function performWarningRuntimeChecks(lexerDefinition, trackLines, lineTerminatorCharacters) {
  const warnings = [];
  let hasAnyLineBreak = false;
  const allTokenTypes = compact_default(flatten_default(values_default(lexerDefinition.modes)));
  const concreteTokenTypes = reject_default(allTokenTypes, (currType) => currType[PATTERN] === Lexer.NA);
  const terminatorCharCodes = getCharCodes(lineTerminatorCharacters);
  if (trackLines) {
    forEach_default(concreteTokenTypes, (tokType) => {
      const currIssue = checkLineBreaksIssues(tokType, terminatorCharCodes);
      if (currIssue !== false) {
        const message = buildLineBreakIssueMessage(tokType, currIssue);
        const warningDescriptor = {
          message,
          type: currIssue.issue,
          tokenType: tokType
        };
        warnings.push(warningDescriptor);
      } else {
        if (has_default(tokType, "LINE_BREAKS")) {
          if (tokType.LINE_BREAKS === true) {
            hasAnyLineBreak = true;
          }
        } else {
          if (canMatchCharCode(terminatorCharCodes, tokType.PATTERN)) {
            hasAnyLineBreak = true;
          }
        }
      }
    });
  }
  if (trackLines && !hasAnyLineBreak) {
    warnings.push({
      message: "Warning: No LINE_BREAKS Found.\n	This Lexer has been defined to track line and column information,\n	But none of the Token Types can be identified as matching a line terminator.\n	See https://chevrotain.io/docs/guide/resolving_lexer_errors.html#LINE_BREAKS \n	for details.",
      type: LexerDefinitionErrorType.NO_LINE_BREAKS_FLAGS
    });
  }
  return warnings;
}
function cloneEmptyGroups(emptyGroups) {
  const clonedResult = {};
  const groupKeys = keys_default(emptyGroups);
  forEach_default(groupKeys, (currKey) => {
    const currGroupValue = emptyGroups[currKey];
    if (isArray_default(currGroupValue)) {
      clonedResult[currKey] = [];
    } else {
      throw Error("non exhaustive match");
    }
  });
  return clonedResult;
}
function isCustomPattern(tokenType) {
  const pattern = tokenType.PATTERN;
  if (isRegExp_default(pattern)) {
    return false;
  } else if (isFunction_default(pattern)) {
    return true;
  } else if (has_default(pattern, "exec")) {
    return true;
  } else if (isString_default(pattern)) {
    return false;
  } else {
    throw Error("non exhaustive match");
  }
}
function isShortPattern(pattern) {
  if (isString_default(pattern) && pattern.length === 1) {
    return pattern.charCodeAt(0);
  } else {
    return false;
  }
}
var LineTerminatorOptimizedTester = {
  // implements /\n|\r\n?/g.test
  test: function(text) {
    const len = text.length;
    for (let i = this.lastIndex; i < len; i++) {
      const c = text.charCodeAt(i);
      if (c === 10) {
        this.lastIndex = i + 1;
        return true;
      } else if (c === 13) {
        if (text.charCodeAt(i + 1) === 10) {
          this.lastIndex = i + 2;
        } else {
          this.lastIndex = i + 1;
        }
        return true;
      }
    }
    return false;
  },
  lastIndex: 0
};
function checkLineBreaksIssues(tokType, lineTerminatorCharCodes) {
  if (has_default(tokType, "LINE_BREAKS")) {
    return false;
  } else {
    if (isRegExp_default(tokType.PATTERN)) {
      try {
        canMatchCharCode(lineTerminatorCharCodes, tokType.PATTERN);
      } catch (e) {
        return {
          issue: LexerDefinitionErrorType.IDENTIFY_TERMINATOR,
          errMsg: e.message
        };
      }
      return false;
    } else if (isString_default(tokType.PATTERN)) {
      return false;
    } else if (isCustomPattern(tokType)) {
      return { issue: LexerDefinitionErrorType.CUSTOM_LINE_BREAK };
    } else {
      throw Error("non exhaustive match");
    }
  }
}
function buildLineBreakIssueMessage(tokType, details) {
  if (details.issue === LexerDefinitionErrorType.IDENTIFY_TERMINATOR) {
    return `Warning: unable to identify line terminator usage in pattern.
	The problem is in the <${tokType.name}> Token Type
	 Root cause: ${details.errMsg}.
	For details See: https://chevrotain.io/docs/guide/resolving_lexer_errors.html#IDENTIFY_TERMINATOR`;
  } else if (details.issue === LexerDefinitionErrorType.CUSTOM_LINE_BREAK) {
    return `Warning: A Custom Token Pattern should specify the <line_breaks> option.
	The problem is in the <${tokType.name}> Token Type
	For details See: https://chevrotain.io/docs/guide/resolving_lexer_errors.html#CUSTOM_LINE_BREAK`;
  } else {
    throw Error("non exhaustive match");
  }
}
function getCharCodes(charsOrCodes) {
  const charCodes = map_default(charsOrCodes, (numOrString) => {
    if (isString_default(numOrString)) {
      return numOrString.charCodeAt(0);
    } else {
      return numOrString;
    }
  });
  return charCodes;
}
function addToMapOfArrays(map2, key, value2) {
  if (map2[key] === void 0) {
    map2[key] = [value2];
  } else {
    map2[key].push(value2);
  }
}
var minOptimizationVal = 256;
var charCodeToOptimizedIdxMap = [];
function charCodeToOptimizedIndex(charCode) {
  return charCode < minOptimizationVal ? charCode : charCodeToOptimizedIdxMap[charCode];
}
function initCharCodeToOptimizedIndexMap() {
  if (isEmpty_default(charCodeToOptimizedIdxMap)) {
    charCodeToOptimizedIdxMap = new Array(65536);
    for (let i = 0; i < 65536; i++) {
      charCodeToOptimizedIdxMap[i] = i > 255 ? 255 + ~~(i / 255) : i;
    }
  }
}

// node_modules/chevrotain/lib/src/scan/tokens.js
function tokenStructuredMatcher(tokInstance, tokConstructor) {
  const instanceType = tokInstance.tokenTypeIdx;
  if (instanceType === tokConstructor.tokenTypeIdx) {
    return true;
  } else {
    return tokConstructor.isParent === true && tokConstructor.categoryMatchesMap[instanceType] === true;
  }
}
function tokenStructuredMatcherNoCategories(token2, tokType) {
  return token2.tokenTypeIdx === tokType.tokenTypeIdx;
}
var tokenShortNameIdx = 1;
var tokenIdxToClass = {};
function augmentTokenTypes(tokenTypes) {
  const tokenTypesAndParents = expandCategories(tokenTypes);
  assignTokenDefaultProps(tokenTypesAndParents);
  assignCategoriesMapProp(tokenTypesAndParents);
  assignCategoriesTokensProp(tokenTypesAndParents);
  forEach_default(tokenTypesAndParents, (tokType) => {
    tokType.isParent = tokType.categoryMatches.length > 0;
  });
}
function expandCategories(tokenTypes) {
  let result = clone_default(tokenTypes);
  let categories = tokenTypes;
  let searching = true;
  while (searching) {
    categories = compact_default(flatten_default(map_default(categories, (currTokType) => currTokType.CATEGORIES)));
    const newCategories = difference_default(categories, result);
    result = result.concat(newCategories);
    if (isEmpty_default(newCategories)) {
      searching = false;
    } else {
      categories = newCategories;
    }
  }
  return result;
}
function assignTokenDefaultProps(tokenTypes) {
  forEach_default(tokenTypes, (currTokType) => {
    if (!hasShortKeyProperty(currTokType)) {
      tokenIdxToClass[tokenShortNameIdx] = currTokType;
      currTokType.tokenTypeIdx = tokenShortNameIdx++;
    }
    if (hasCategoriesProperty(currTokType) && !isArray_default(currTokType.CATEGORIES)) {
      currTokType.CATEGORIES = [currTokType.CATEGORIES];
    }
    if (!hasCategoriesProperty(currTokType)) {
      currTokType.CATEGORIES = [];
    }
    if (!hasExtendingTokensTypesProperty(currTokType)) {
      currTokType.categoryMatches = [];
    }
    if (!hasExtendingTokensTypesMapProperty(currTokType)) {
      currTokType.categoryMatchesMap = {};
    }
  });
}
function assignCategoriesTokensProp(tokenTypes) {
  forEach_default(tokenTypes, (currTokType) => {
    currTokType.categoryMatches = [];
    forEach_default(currTokType.categoryMatchesMap, (val, key) => {
      currTokType.categoryMatches.push(tokenIdxToClass[key].tokenTypeIdx);
    });
  });
}
function assignCategoriesMapProp(tokenTypes) {
  forEach_default(tokenTypes, (currTokType) => {
    singleAssignCategoriesToksMap([], currTokType);
  });
}
function singleAssignCategoriesToksMap(path, nextNode) {
  forEach_default(path, (pathNode) => {
    nextNode.categoryMatchesMap[pathNode.tokenTypeIdx] = true;
  });
  forEach_default(nextNode.CATEGORIES, (nextCategory) => {
    const newPath = path.concat(nextNode);
    if (!includes_default(newPath, nextCategory)) {
      singleAssignCategoriesToksMap(newPath, nextCategory);
    }
  });
}
function hasShortKeyProperty(tokType) {
  return has_default(tokType, "tokenTypeIdx");
}
function hasCategoriesProperty(tokType) {
  return has_default(tokType, "CATEGORIES");
}
function hasExtendingTokensTypesProperty(tokType) {
  return has_default(tokType, "categoryMatches");
}
function hasExtendingTokensTypesMapProperty(tokType) {
  return has_default(tokType, "categoryMatchesMap");
}
function isTokenType(tokType) {
  return has_default(tokType, "tokenTypeIdx");
}

// node_modules/chevrotain/lib/src/scan/lexer_errors_public.js
var defaultLexerErrorProvider = {
  buildUnableToPopLexerModeMessage(token2) {
    return `Unable to pop Lexer Mode after encountering Token ->${token2.image}<- The Mode Stack is empty`;
  },
  buildUnexpectedCharactersMessage(fullText, startOffset, length, line, column, mode) {
    return `unexpected character: ->${fullText.charAt(startOffset)}<- at offset: ${startOffset}, skipped ${length} characters.`;
  }
};

// node_modules/chevrotain/lib/src/scan/lexer_public.js
var LexerDefinitionErrorType;
(function(LexerDefinitionErrorType2) {
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["MISSING_PATTERN"] = 0] = "MISSING_PATTERN";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["INVALID_PATTERN"] = 1] = "INVALID_PATTERN";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["EOI_ANCHOR_FOUND"] = 2] = "EOI_ANCHOR_FOUND";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["UNSUPPORTED_FLAGS_FOUND"] = 3] = "UNSUPPORTED_FLAGS_FOUND";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["DUPLICATE_PATTERNS_FOUND"] = 4] = "DUPLICATE_PATTERNS_FOUND";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["INVALID_GROUP_TYPE_FOUND"] = 5] = "INVALID_GROUP_TYPE_FOUND";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["PUSH_MODE_DOES_NOT_EXIST"] = 6] = "PUSH_MODE_DOES_NOT_EXIST";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["MULTI_MODE_LEXER_WITHOUT_DEFAULT_MODE"] = 7] = "MULTI_MODE_LEXER_WITHOUT_DEFAULT_MODE";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["MULTI_MODE_LEXER_WITHOUT_MODES_PROPERTY"] = 8] = "MULTI_MODE_LEXER_WITHOUT_MODES_PROPERTY";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["MULTI_MODE_LEXER_DEFAULT_MODE_VALUE_DOES_NOT_EXIST"] = 9] = "MULTI_MODE_LEXER_DEFAULT_MODE_VALUE_DOES_NOT_EXIST";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["LEXER_DEFINITION_CANNOT_CONTAIN_UNDEFINED"] = 10] = "LEXER_DEFINITION_CANNOT_CONTAIN_UNDEFINED";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["SOI_ANCHOR_FOUND"] = 11] = "SOI_ANCHOR_FOUND";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["EMPTY_MATCH_PATTERN"] = 12] = "EMPTY_MATCH_PATTERN";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["NO_LINE_BREAKS_FLAGS"] = 13] = "NO_LINE_BREAKS_FLAGS";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["UNREACHABLE_PATTERN"] = 14] = "UNREACHABLE_PATTERN";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["IDENTIFY_TERMINATOR"] = 15] = "IDENTIFY_TERMINATOR";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["CUSTOM_LINE_BREAK"] = 16] = "CUSTOM_LINE_BREAK";
  LexerDefinitionErrorType2[LexerDefinitionErrorType2["MULTI_MODE_LEXER_LONGER_ALT_NOT_IN_CURRENT_MODE"] = 17] = "MULTI_MODE_LEXER_LONGER_ALT_NOT_IN_CURRENT_MODE";
})(LexerDefinitionErrorType || (LexerDefinitionErrorType = {}));
var DEFAULT_LEXER_CONFIG = {
  deferDefinitionErrorsHandling: false,
  positionTracking: "full",
  lineTerminatorsPattern: /\n|\r\n?/g,
  lineTerminatorCharacters: ["\n", "\r"],
  ensureOptimizations: false,
  safeMode: false,
  errorMessageProvider: defaultLexerErrorProvider,
  traceInitPerf: false,
  skipValidations: false,
  recoveryEnabled: true
};
Object.freeze(DEFAULT_LEXER_CONFIG);
var Lexer = class {
  constructor(lexerDefinition, config = DEFAULT_LEXER_CONFIG) {
    this.lexerDefinition = lexerDefinition;
    this.lexerDefinitionErrors = [];
    this.lexerDefinitionWarning = [];
    this.patternIdxToConfig = {};
    this.charCodeToPatternIdxToConfig = {};
    this.modes = [];
    this.emptyGroups = {};
    this.trackStartLines = true;
    this.trackEndLines = true;
    this.hasCustom = false;
    this.canModeBeOptimized = {};
    this.TRACE_INIT = (phaseDesc, phaseImpl) => {
      if (this.traceInitPerf === true) {
        this.traceInitIndent++;
        const indent = new Array(this.traceInitIndent + 1).join("	");
        if (this.traceInitIndent < this.traceInitMaxIdent) {
          console.log(`${indent}--> <${phaseDesc}>`);
        }
        const { time: time2, value: value2 } = timer(phaseImpl);
        const traceMethod = time2 > 10 ? console.warn : console.log;
        if (this.traceInitIndent < this.traceInitMaxIdent) {
          traceMethod(`${indent}<-- <${phaseDesc}> time: ${time2}ms`);
        }
        this.traceInitIndent--;
        return value2;
      } else {
        return phaseImpl();
      }
    };
    if (typeof config === "boolean") {
      throw Error("The second argument to the Lexer constructor is now an ILexerConfig Object.\na boolean 2nd argument is no longer supported");
    }
    this.config = assign_default({}, DEFAULT_LEXER_CONFIG, config);
    const traceInitVal = this.config.traceInitPerf;
    if (traceInitVal === true) {
      this.traceInitMaxIdent = Infinity;
      this.traceInitPerf = true;
    } else if (typeof traceInitVal === "number") {
      this.traceInitMaxIdent = traceInitVal;
      this.traceInitPerf = true;
    }
    this.traceInitIndent = -1;
    this.TRACE_INIT("Lexer Constructor", () => {
      let actualDefinition;
      let hasOnlySingleMode = true;
      this.TRACE_INIT("Lexer Config handling", () => {
        if (this.config.lineTerminatorsPattern === DEFAULT_LEXER_CONFIG.lineTerminatorsPattern) {
          this.config.lineTerminatorsPattern = LineTerminatorOptimizedTester;
        } else {
          if (this.config.lineTerminatorCharacters === DEFAULT_LEXER_CONFIG.lineTerminatorCharacters) {
            throw Error("Error: Missing <lineTerminatorCharacters> property on the Lexer config.\n	For details See: https://chevrotain.io/docs/guide/resolving_lexer_errors.html#MISSING_LINE_TERM_CHARS");
          }
        }
        if (config.safeMode && config.ensureOptimizations) {
          throw Error('"safeMode" and "ensureOptimizations" flags are mutually exclusive.');
        }
        this.trackStartLines = /full|onlyStart/i.test(this.config.positionTracking);
        this.trackEndLines = /full/i.test(this.config.positionTracking);
        if (isArray_default(lexerDefinition)) {
          actualDefinition = {
            modes: { defaultMode: clone_default(lexerDefinition) },
            defaultMode: DEFAULT_MODE
          };
        } else {
          hasOnlySingleMode = false;
          actualDefinition = clone_default(lexerDefinition);
        }
      });
      if (this.config.skipValidations === false) {
        this.TRACE_INIT("performRuntimeChecks", () => {
          this.lexerDefinitionErrors = this.lexerDefinitionErrors.concat(performRuntimeChecks(actualDefinition, this.trackStartLines, this.config.lineTerminatorCharacters));
        });
        this.TRACE_INIT("performWarningRuntimeChecks", () => {
          this.lexerDefinitionWarning = this.lexerDefinitionWarning.concat(performWarningRuntimeChecks(actualDefinition, this.trackStartLines, this.config.lineTerminatorCharacters));
        });
      }
      actualDefinition.modes = actualDefinition.modes ? actualDefinition.modes : {};
      forEach_default(actualDefinition.modes, (currModeValue, currModeName) => {
        actualDefinition.modes[currModeName] = reject_default(currModeValue, (currTokType) => isUndefined_default(currTokType));
      });
      const allModeNames = keys_default(actualDefinition.modes);
      forEach_default(actualDefinition.modes, (currModDef, currModName) => {
        this.TRACE_INIT(`Mode: <${currModName}> processing`, () => {
          this.modes.push(currModName);
          if (this.config.skipValidations === false) {
            this.TRACE_INIT(`validatePatterns`, () => {
              this.lexerDefinitionErrors = this.lexerDefinitionErrors.concat(validatePatterns(currModDef, allModeNames));
            });
          }
          if (isEmpty_default(this.lexerDefinitionErrors)) {
            augmentTokenTypes(currModDef);
            let currAnalyzeResult;
            this.TRACE_INIT(`analyzeTokenTypes`, () => {
              currAnalyzeResult = analyzeTokenTypes(currModDef, {
                lineTerminatorCharacters: this.config.lineTerminatorCharacters,
                positionTracking: config.positionTracking,
                ensureOptimizations: config.ensureOptimizations,
                safeMode: config.safeMode,
                tracer: this.TRACE_INIT
              });
            });
            this.patternIdxToConfig[currModName] = currAnalyzeResult.patternIdxToConfig;
            this.charCodeToPatternIdxToConfig[currModName] = currAnalyzeResult.charCodeToPatternIdxToConfig;
            this.emptyGroups = assign_default({}, this.emptyGroups, currAnalyzeResult.emptyGroups);
            this.hasCustom = currAnalyzeResult.hasCustom || this.hasCustom;
            this.canModeBeOptimized[currModName] = currAnalyzeResult.canBeOptimized;
          }
        });
      });
      this.defaultMode = actualDefinition.defaultMode;
      if (!isEmpty_default(this.lexerDefinitionErrors) && !this.config.deferDefinitionErrorsHandling) {
        const allErrMessages = map_default(this.lexerDefinitionErrors, (error) => {
          return error.message;
        });
        const allErrMessagesString = allErrMessages.join("-----------------------\n");
        throw new Error("Errors detected in definition of Lexer:\n" + allErrMessagesString);
      }
      forEach_default(this.lexerDefinitionWarning, (warningDescriptor) => {
        PRINT_WARNING(warningDescriptor.message);
      });
      this.TRACE_INIT("Choosing sub-methods implementations", () => {
        if (hasOnlySingleMode) {
          this.handleModes = noop_default;
        }
        if (this.trackStartLines === false) {
          this.computeNewColumn = identity_default;
        }
        if (this.trackEndLines === false) {
          this.updateTokenEndLineColumnLocation = noop_default;
        }
        if (/full/i.test(this.config.positionTracking)) {
          this.createTokenInstance = this.createFullToken;
        } else if (/onlyStart/i.test(this.config.positionTracking)) {
          this.createTokenInstance = this.createStartOnlyToken;
        } else if (/onlyOffset/i.test(this.config.positionTracking)) {
          this.createTokenInstance = this.createOffsetOnlyToken;
        } else {
          throw Error(`Invalid <positionTracking> config option: "${this.config.positionTracking}"`);
        }
        if (this.hasCustom) {
          this.addToken = this.addTokenUsingPush;
          this.handlePayload = this.handlePayloadWithCustom;
        } else {
          this.addToken = this.addTokenUsingMemberAccess;
          this.handlePayload = this.handlePayloadNoCustom;
        }
      });
      this.TRACE_INIT("Failed Optimization Warnings", () => {
        const unOptimizedModes = reduce_default(this.canModeBeOptimized, (cannotBeOptimized, canBeOptimized, modeName) => {
          if (canBeOptimized === false) {
            cannotBeOptimized.push(modeName);
          }
          return cannotBeOptimized;
        }, []);
        if (config.ensureOptimizations && !isEmpty_default(unOptimizedModes)) {
          throw Error(`Lexer Modes: < ${unOptimizedModes.join(", ")} > cannot be optimized.
	 Disable the "ensureOptimizations" lexer config flag to silently ignore this and run the lexer in an un-optimized mode.
	 Or inspect the console log for details on how to resolve these issues.`);
        }
      });
      this.TRACE_INIT("clearRegExpParserCache", () => {
        clearRegExpParserCache();
      });
      this.TRACE_INIT("toFastProperties", () => {
        toFastProperties(this);
      });
    });
  }
  tokenize(text, initialMode = this.defaultMode) {
    if (!isEmpty_default(this.lexerDefinitionErrors)) {
      const allErrMessages = map_default(this.lexerDefinitionErrors, (error) => {
        return error.message;
      });
      const allErrMessagesString = allErrMessages.join("-----------------------\n");
      throw new Error("Unable to Tokenize because Errors detected in definition of Lexer:\n" + allErrMessagesString);
    }
    return this.tokenizeInternal(text, initialMode);
  }
  // There is quite a bit of duplication between this and "tokenizeInternalLazy"
  // This is intentional due to performance considerations.
  // this method also used quite a bit of `!` none null assertions because it is too optimized
  // for `tsc` to always understand it is "safe"
  tokenizeInternal(text, initialMode) {
    let i, j, k, matchAltImage, longerAlt, matchedImage, payload, altPayload, imageLength, group, tokType, newToken, errLength, msg, match;
    const orgText = text;
    const orgLength = orgText.length;
    let offset = 0;
    let matchedTokensIndex = 0;
    const guessedNumberOfTokens = this.hasCustom ? 0 : Math.floor(text.length / 10);
    const matchedTokens = new Array(guessedNumberOfTokens);
    const errors = [];
    let line = this.trackStartLines ? 1 : void 0;
    let column = this.trackStartLines ? 1 : void 0;
    const groups = cloneEmptyGroups(this.emptyGroups);
    const trackLines = this.trackStartLines;
    const lineTerminatorPattern = this.config.lineTerminatorsPattern;
    let currModePatternsLength = 0;
    let patternIdxToConfig = [];
    let currCharCodeToPatternIdxToConfig = [];
    const modeStack = [];
    const emptyArray = [];
    Object.freeze(emptyArray);
    let isOptimizedMode = false;
    const pop_mode = (popToken) => {
      if (modeStack.length === 1 && // if we have both a POP_MODE and a PUSH_MODE this is in-fact a "transition"
      // So no error should occur.
      popToken.tokenType.PUSH_MODE === void 0) {
        const msg2 = this.config.errorMessageProvider.buildUnableToPopLexerModeMessage(popToken);
        errors.push({
          offset: popToken.startOffset,
          line: popToken.startLine,
          column: popToken.startColumn,
          length: popToken.image.length,
          message: msg2
        });
      } else {
        modeStack.pop();
        const newMode = last_default(modeStack);
        patternIdxToConfig = this.patternIdxToConfig[newMode];
        currCharCodeToPatternIdxToConfig = this.charCodeToPatternIdxToConfig[newMode];
        currModePatternsLength = patternIdxToConfig.length;
        const modeCanBeOptimized = this.canModeBeOptimized[newMode] && this.config.safeMode === false;
        if (currCharCodeToPatternIdxToConfig && modeCanBeOptimized) {
          isOptimizedMode = true;
        } else {
          isOptimizedMode = false;
        }
      }
    };
    function push_mode(newMode) {
      modeStack.push(newMode);
      currCharCodeToPatternIdxToConfig = this.charCodeToPatternIdxToConfig[newMode];
      patternIdxToConfig = this.patternIdxToConfig[newMode];
      currModePatternsLength = patternIdxToConfig.length;
      currModePatternsLength = patternIdxToConfig.length;
      const modeCanBeOptimized = this.canModeBeOptimized[newMode] && this.config.safeMode === false;
      if (currCharCodeToPatternIdxToConfig && modeCanBeOptimized) {
        isOptimizedMode = true;
      } else {
        isOptimizedMode = false;
      }
    }
    push_mode.call(this, initialMode);
    let currConfig;
    const recoveryEnabled = this.config.recoveryEnabled;
    while (offset < orgLength) {
      matchedImage = null;
      imageLength = -1;
      const nextCharCode = orgText.charCodeAt(offset);
      let chosenPatternIdxToConfig;
      if (isOptimizedMode) {
        const optimizedCharIdx = charCodeToOptimizedIndex(nextCharCode);
        const possiblePatterns = currCharCodeToPatternIdxToConfig[optimizedCharIdx];
        chosenPatternIdxToConfig = possiblePatterns !== void 0 ? possiblePatterns : emptyArray;
      } else {
        chosenPatternIdxToConfig = patternIdxToConfig;
      }
      const chosenPatternsLength = chosenPatternIdxToConfig.length;
      for (i = 0; i < chosenPatternsLength; i++) {
        currConfig = chosenPatternIdxToConfig[i];
        const currPattern = currConfig.pattern;
        payload = null;
        const singleCharCode = currConfig.short;
        if (singleCharCode !== false) {
          if (nextCharCode === singleCharCode) {
            imageLength = 1;
            matchedImage = currPattern;
          }
        } else if (currConfig.isCustom === true) {
          match = currPattern.exec(orgText, offset, matchedTokens, groups);
          if (match !== null) {
            matchedImage = match[0];
            imageLength = matchedImage.length;
            if (match.payload !== void 0) {
              payload = match.payload;
            }
          } else {
            matchedImage = null;
          }
        } else {
          currPattern.lastIndex = offset;
          imageLength = this.matchLength(currPattern, text, offset);
        }
        if (imageLength !== -1) {
          longerAlt = currConfig.longerAlt;
          if (longerAlt !== void 0) {
            matchedImage = text.substring(offset, offset + imageLength);
            const longerAltLength = longerAlt.length;
            for (k = 0; k < longerAltLength; k++) {
              const longerAltConfig = patternIdxToConfig[longerAlt[k]];
              const longerAltPattern = longerAltConfig.pattern;
              altPayload = null;
              if (longerAltConfig.isCustom === true) {
                match = longerAltPattern.exec(orgText, offset, matchedTokens, groups);
                if (match !== null) {
                  matchAltImage = match[0];
                  if (match.payload !== void 0) {
                    altPayload = match.payload;
                  }
                } else {
                  matchAltImage = null;
                }
              } else {
                longerAltPattern.lastIndex = offset;
                matchAltImage = this.match(longerAltPattern, text, offset);
              }
              if (matchAltImage && matchAltImage.length > matchedImage.length) {
                matchedImage = matchAltImage;
                imageLength = matchAltImage.length;
                payload = altPayload;
                currConfig = longerAltConfig;
                break;
              }
            }
          }
          break;
        }
      }
      if (imageLength !== -1) {
        group = currConfig.group;
        if (group !== void 0) {
          matchedImage = matchedImage !== null ? matchedImage : text.substring(offset, offset + imageLength);
          tokType = currConfig.tokenTypeIdx;
          newToken = this.createTokenInstance(matchedImage, offset, tokType, currConfig.tokenType, line, column, imageLength);
          this.handlePayload(newToken, payload);
          if (group === false) {
            matchedTokensIndex = this.addToken(matchedTokens, matchedTokensIndex, newToken);
          } else {
            groups[group].push(newToken);
          }
        }
        if (trackLines === true && currConfig.canLineTerminator === true) {
          let numOfLTsInMatch = 0;
          let foundTerminator;
          let lastLTEndOffset;
          lineTerminatorPattern.lastIndex = 0;
          do {
            matchedImage = matchedImage !== null ? matchedImage : text.substring(offset, offset + imageLength);
            foundTerminator = lineTerminatorPattern.test(matchedImage);
            if (foundTerminator === true) {
              lastLTEndOffset = lineTerminatorPattern.lastIndex - 1;
              numOfLTsInMatch++;
            }
          } while (foundTerminator === true);
          if (numOfLTsInMatch !== 0) {
            line = line + numOfLTsInMatch;
            column = imageLength - lastLTEndOffset;
            this.updateTokenEndLineColumnLocation(newToken, group, lastLTEndOffset, numOfLTsInMatch, line, column, imageLength);
          } else {
            column = this.computeNewColumn(column, imageLength);
          }
        } else {
          column = this.computeNewColumn(column, imageLength);
        }
        offset = offset + imageLength;
        this.handleModes(currConfig, pop_mode, push_mode, newToken);
      } else {
        const errorStartOffset = offset;
        const errorLine = line;
        const errorColumn = column;
        let foundResyncPoint = recoveryEnabled === false;
        while (foundResyncPoint === false && offset < orgLength) {
          offset++;
          for (j = 0; j < currModePatternsLength; j++) {
            const currConfig2 = patternIdxToConfig[j];
            const currPattern = currConfig2.pattern;
            const singleCharCode = currConfig2.short;
            if (singleCharCode !== false) {
              if (orgText.charCodeAt(offset) === singleCharCode) {
                foundResyncPoint = true;
              }
            } else if (currConfig2.isCustom === true) {
              foundResyncPoint = currPattern.exec(orgText, offset, matchedTokens, groups) !== null;
            } else {
              currPattern.lastIndex = offset;
              foundResyncPoint = currPattern.exec(text) !== null;
            }
            if (foundResyncPoint === true) {
              break;
            }
          }
        }
        errLength = offset - errorStartOffset;
        column = this.computeNewColumn(column, errLength);
        msg = this.config.errorMessageProvider.buildUnexpectedCharactersMessage(orgText, errorStartOffset, errLength, errorLine, errorColumn, last_default(modeStack));
        errors.push({
          offset: errorStartOffset,
          line: errorLine,
          column: errorColumn,
          length: errLength,
          message: msg
        });
        if (recoveryEnabled === false) {
          break;
        }
      }
    }
    if (!this.hasCustom) {
      matchedTokens.length = matchedTokensIndex;
    }
    return {
      tokens: matchedTokens,
      groups,
      errors
    };
  }
  handleModes(config, pop_mode, push_mode, newToken) {
    if (config.pop === true) {
      const pushMode = config.push;
      pop_mode(newToken);
      if (pushMode !== void 0) {
        push_mode.call(this, pushMode);
      }
    } else if (config.push !== void 0) {
      push_mode.call(this, config.push);
    }
  }
  // TODO: decrease this under 600 characters? inspect stripping comments option in TSC compiler
  updateTokenEndLineColumnLocation(newToken, group, lastLTIdx, numOfLTsInMatch, line, column, imageLength) {
    let lastCharIsLT, fixForEndingInLT;
    if (group !== void 0) {
      lastCharIsLT = lastLTIdx === imageLength - 1;
      fixForEndingInLT = lastCharIsLT ? -1 : 0;
      if (!(numOfLTsInMatch === 1 && lastCharIsLT === true)) {
        newToken.endLine = line + fixForEndingInLT;
        newToken.endColumn = column - 1 + -fixForEndingInLT;
      }
    }
  }
  computeNewColumn(oldColumn, imageLength) {
    return oldColumn + imageLength;
  }
  createOffsetOnlyToken(image, startOffset, tokenTypeIdx, tokenType) {
    return {
      image,
      startOffset,
      tokenTypeIdx,
      tokenType
    };
  }
  createStartOnlyToken(image, startOffset, tokenTypeIdx, tokenType, startLine, startColumn) {
    return {
      image,
      startOffset,
      startLine,
      startColumn,
      tokenTypeIdx,
      tokenType
    };
  }
  createFullToken(image, startOffset, tokenTypeIdx, tokenType, startLine, startColumn, imageLength) {
    return {
      image,
      startOffset,
      endOffset: startOffset + imageLength - 1,
      startLine,
      endLine: startLine,
      startColumn,
      endColumn: startColumn + imageLength - 1,
      tokenTypeIdx,
      tokenType
    };
  }
  addTokenUsingPush(tokenVector, index, tokenToAdd) {
    tokenVector.push(tokenToAdd);
    return index;
  }
  addTokenUsingMemberAccess(tokenVector, index, tokenToAdd) {
    tokenVector[index] = tokenToAdd;
    index++;
    return index;
  }
  handlePayloadNoCustom(token2, payload) {
  }
  handlePayloadWithCustom(token2, payload) {
    if (payload !== null) {
      token2.payload = payload;
    }
  }
  match(pattern, text, offset) {
    const found = pattern.test(text);
    if (found === true) {
      return text.substring(offset, pattern.lastIndex);
    }
    return null;
  }
  matchLength(pattern, text, offset) {
    const found = pattern.test(text);
    if (found === true) {
      return pattern.lastIndex - offset;
    }
    return -1;
  }
};
Lexer.SKIPPED = "This marks a skipped Token pattern, this means each token identified by it will be consumed and then thrown into oblivion, this can be used to for example to completely ignore whitespace.";
Lexer.NA = /NOT_APPLICABLE/;

// node_modules/chevrotain/lib/src/scan/tokens_public.js
function tokenLabel2(tokType) {
  if (hasTokenLabel2(tokType)) {
    return tokType.LABEL;
  } else {
    return tokType.name;
  }
}
function hasTokenLabel2(obj) {
  return isString_default(obj.LABEL) && obj.LABEL !== "";
}
var PARENT = "parent";
var CATEGORIES = "categories";
var LABEL = "label";
var GROUP = "group";
var PUSH_MODE = "push_mode";
var POP_MODE = "pop_mode";
var LONGER_ALT = "longer_alt";
var LINE_BREAKS = "line_breaks";
var START_CHARS_HINT = "start_chars_hint";
function createToken(config) {
  return createTokenInternal(config);
}
function createTokenInternal(config) {
  const pattern = config.pattern;
  const tokenType = {};
  tokenType.name = config.name;
  if (!isUndefined_default(pattern)) {
    tokenType.PATTERN = pattern;
  }
  if (has_default(config, PARENT)) {
    throw "The parent property is no longer supported.\nSee: https://github.com/chevrotain/chevrotain/issues/564#issuecomment-349062346 for details.";
  }
  if (has_default(config, CATEGORIES)) {
    tokenType.CATEGORIES = config[CATEGORIES];
  }
  augmentTokenTypes([tokenType]);
  if (has_default(config, LABEL)) {
    tokenType.LABEL = config[LABEL];
  }
  if (has_default(config, GROUP)) {
    tokenType.GROUP = config[GROUP];
  }
  if (has_default(config, POP_MODE)) {
    tokenType.POP_MODE = config[POP_MODE];
  }
  if (has_default(config, PUSH_MODE)) {
    tokenType.PUSH_MODE = config[PUSH_MODE];
  }
  if (has_default(config, LONGER_ALT)) {
    tokenType.LONGER_ALT = config[LONGER_ALT];
  }
  if (has_default(config, LINE_BREAKS)) {
    tokenType.LINE_BREAKS = config[LINE_BREAKS];
  }
  if (has_default(config, START_CHARS_HINT)) {
    tokenType.START_CHARS_HINT = config[START_CHARS_HINT];
  }
  return tokenType;
}
var EOF = createToken({ name: "EOF", pattern: Lexer.NA });
augmentTokenTypes([EOF]);
function createTokenInstance(tokType, image, startOffset, endOffset, startLine, endLine, startColumn, endColumn) {
  return {
    image,
    startOffset,
    endOffset,
    startLine,
    endLine,
    startColumn,
    endColumn,
    tokenTypeIdx: tokType.tokenTypeIdx,
    tokenType: tokType
  };
}
function tokenMatcher(token2, tokType) {
  return tokenStructuredMatcher(token2, tokType);
}

// node_modules/chevrotain/lib/src/parse/errors_public.js
var defaultParserErrorProvider = {
  buildMismatchTokenMessage({ expected, actual, previous, ruleName }) {
    const hasLabel = hasTokenLabel2(expected);
    const expectedMsg = hasLabel ? `--> ${tokenLabel2(expected)} <--` : `token of type --> ${expected.name} <--`;
    const msg = `Expecting ${expectedMsg} but found --> '${actual.image}' <--`;
    return msg;
  },
  buildNotAllInputParsedMessage({ firstRedundant, ruleName }) {
    return "Redundant input, expecting EOF but found: " + firstRedundant.image;
  },
  buildNoViableAltMessage({ expectedPathsPerAlt, actual, previous, customUserDescription, ruleName }) {
    const errPrefix = "Expecting: ";
    const actualText = head_default(actual).image;
    const errSuffix = "\nbut found: '" + actualText + "'";
    if (customUserDescription) {
      return errPrefix + customUserDescription + errSuffix;
    } else {
      const allLookAheadPaths = reduce_default(expectedPathsPerAlt, (result, currAltPaths) => result.concat(currAltPaths), []);
      const nextValidTokenSequences = map_default(allLookAheadPaths, (currPath) => `[${map_default(currPath, (currTokenType) => tokenLabel2(currTokenType)).join(", ")}]`);
      const nextValidSequenceItems = map_default(nextValidTokenSequences, (itemMsg, idx) => `  ${idx + 1}. ${itemMsg}`);
      const calculatedDescription = `one of these possible Token sequences:
${nextValidSequenceItems.join("\n")}`;
      return errPrefix + calculatedDescription + errSuffix;
    }
  },
  buildEarlyExitMessage({ expectedIterationPaths, actual, customUserDescription, ruleName }) {
    const errPrefix = "Expecting: ";
    const actualText = head_default(actual).image;
    const errSuffix = "\nbut found: '" + actualText + "'";
    if (customUserDescription) {
      return errPrefix + customUserDescription + errSuffix;
    } else {
      const nextValidTokenSequences = map_default(expectedIterationPaths, (currPath) => `[${map_default(currPath, (currTokenType) => tokenLabel2(currTokenType)).join(",")}]`);
      const calculatedDescription = `expecting at least one iteration which starts with one of these possible Token sequences::
  <${nextValidTokenSequences.join(" ,")}>`;
      return errPrefix + calculatedDescription + errSuffix;
    }
  }
};
Object.freeze(defaultParserErrorProvider);
var defaultGrammarResolverErrorProvider = {
  buildRuleNotFoundError(topLevelRule, undefinedRule) {
    const msg = "Invalid grammar, reference to a rule which is not defined: ->" + undefinedRule.nonTerminalName + "<-\ninside top level rule: ->" + topLevelRule.name + "<-";
    return msg;
  }
};
var defaultGrammarValidatorErrorProvider = {
  buildDuplicateFoundError(topLevelRule, duplicateProds) {
    function getExtraProductionArgument2(prod) {
      if (prod instanceof Terminal) {
        return prod.terminalType.name;
      } else if (prod instanceof NonTerminal) {
        return prod.nonTerminalName;
      } else {
        return "";
      }
    }
    const topLevelName = topLevelRule.name;
    const duplicateProd = head_default(duplicateProds);
    const index = duplicateProd.idx;
    const dslName = getProductionDslName(duplicateProd);
    const extraArgument = getExtraProductionArgument2(duplicateProd);
    const hasExplicitIndex = index > 0;
    let msg = `->${dslName}${hasExplicitIndex ? index : ""}<- ${extraArgument ? `with argument: ->${extraArgument}<-` : ""}
                  appears more than once (${duplicateProds.length} times) in the top level rule: ->${topLevelName}<-.                  
                  For further details see: https://chevrotain.io/docs/FAQ.html#NUMERICAL_SUFFIXES 
                  `;
    msg = msg.replace(/[ \t]+/g, " ");
    msg = msg.replace(/\s\s+/g, "\n");
    return msg;
  },
  buildNamespaceConflictError(rule) {
    const errMsg = `Namespace conflict found in grammar.
The grammar has both a Terminal(Token) and a Non-Terminal(Rule) named: <${rule.name}>.
To resolve this make sure each Terminal and Non-Terminal names are unique
This is easy to accomplish by using the convention that Terminal names start with an uppercase letter
and Non-Terminal names start with a lower case letter.`;
    return errMsg;
  },
  buildAlternationPrefixAmbiguityError(options2) {
    const pathMsg = map_default(options2.prefixPath, (currTok) => tokenLabel2(currTok)).join(", ");
    const occurrence = options2.alternation.idx === 0 ? "" : options2.alternation.idx;
    const errMsg = `Ambiguous alternatives: <${options2.ambiguityIndices.join(" ,")}> due to common lookahead prefix
in <OR${occurrence}> inside <${options2.topLevelRule.name}> Rule,
<${pathMsg}> may appears as a prefix path in all these alternatives.
See: https://chevrotain.io/docs/guide/resolving_grammar_errors.html#COMMON_PREFIX
For Further details.`;
    return errMsg;
  },
  buildAlternationAmbiguityError(options2) {
    const occurrence = options2.alternation.idx === 0 ? "" : options2.alternation.idx;
    const isEmptyPath = options2.prefixPath.length === 0;
    let currMessage = `Ambiguous Alternatives Detected: <${options2.ambiguityIndices.join(" ,")}> in <OR${occurrence}> inside <${options2.topLevelRule.name}> Rule,
`;
    if (isEmptyPath) {
      currMessage += `These alternatives are all empty (match no tokens), making them indistinguishable.
Only the last alternative may be empty.
`;
    } else {
      const pathMsg = map_default(options2.prefixPath, (currtok) => tokenLabel2(currtok)).join(", ");
      currMessage += `<${pathMsg}> may appears as a prefix path in all these alternatives.
`;
    }
    currMessage += `See: https://chevrotain.io/docs/guide/resolving_grammar_errors.html#AMBIGUOUS_ALTERNATIVES
For Further details.`;
    return currMessage;
  },
  buildEmptyRepetitionError(options2) {
    let dslName = getProductionDslName(options2.repetition);
    if (options2.repetition.idx !== 0) {
      dslName += options2.repetition.idx;
    }
    const errMsg = `The repetition <${dslName}> within Rule <${options2.topLevelRule.name}> can never consume any tokens.
This could lead to an infinite loop.`;
    return errMsg;
  },
  // TODO: remove - `errors_public` from nyc.config.js exclude
  //       once this method is fully removed from this file
  buildTokenNameError(options2) {
    return "deprecated";
  },
  buildEmptyAlternationError(options2) {
    const errMsg = `Ambiguous empty alternative: <${options2.emptyChoiceIdx + 1}> in <OR${options2.alternation.idx}> inside <${options2.topLevelRule.name}> Rule.
Only the last alternative may be an empty alternative.`;
    return errMsg;
  },
  buildTooManyAlternativesError(options2) {
    const errMsg = `An Alternation cannot have more than 256 alternatives:
<OR${options2.alternation.idx}> inside <${options2.topLevelRule.name}> Rule.
 has ${options2.alternation.definition.length + 1} alternatives.`;
    return errMsg;
  },
  buildLeftRecursionError(options2) {
    const ruleName = options2.topLevelRule.name;
    const pathNames = map_default(options2.leftRecursionPath, (currRule) => currRule.name);
    const leftRecursivePath = `${ruleName} --> ${pathNames.concat([ruleName]).join(" --> ")}`;
    const errMsg = `Left Recursion found in grammar.
rule: <${ruleName}> can be invoked from itself (directly or indirectly)
without consuming any Tokens. The grammar path that causes this is: 
 ${leftRecursivePath}
 To fix this refactor your grammar to remove the left recursion.
see: https://en.wikipedia.org/wiki/LL_parser#Left_factoring.`;
    return errMsg;
  },
  // TODO: remove - `errors_public` from nyc.config.js exclude
  //       once this method is fully removed from this file
  buildInvalidRuleNameError(options2) {
    return "deprecated";
  },
  buildDuplicateRuleNameError(options2) {
    let ruleName;
    if (options2.topLevelRule instanceof Rule) {
      ruleName = options2.topLevelRule.name;
    } else {
      ruleName = options2.topLevelRule;
    }
    const errMsg = `Duplicate definition, rule: ->${ruleName}<- is already defined in the grammar: ->${options2.grammarName}<-`;
    return errMsg;
  }
};

// node_modules/chevrotain/lib/src/parse/grammar/resolver.js
function resolveGrammar(topLevels, errMsgProvider) {
  const refResolver = new GastRefResolverVisitor(topLevels, errMsgProvider);
  refResolver.resolveRefs();
  return refResolver.errors;
}
var GastRefResolverVisitor = class extends GAstVisitor {
  constructor(nameToTopRule, errMsgProvider) {
    super();
    this.nameToTopRule = nameToTopRule;
    this.errMsgProvider = errMsgProvider;
    this.errors = [];
  }
  resolveRefs() {
    forEach_default(values_default(this.nameToTopRule), (prod) => {
      this.currTopLevel = prod;
      prod.accept(this);
    });
  }
  visitNonTerminal(node) {
    const ref = this.nameToTopRule[node.nonTerminalName];
    if (!ref) {
      const msg = this.errMsgProvider.buildRuleNotFoundError(this.currTopLevel, node);
      this.errors.push({
        message: msg,
        type: ParserDefinitionErrorType.UNRESOLVED_SUBRULE_REF,
        ruleName: this.currTopLevel.name,
        unresolvedRefName: node.nonTerminalName
      });
    } else {
      node.referencedRule = ref;
    }
  }
};

// node_modules/chevrotain/lib/src/parse/grammar/interpreter.js
var AbstractNextPossibleTokensWalker = class extends RestWalker {
  constructor(topProd, path) {
    super();
    this.topProd = topProd;
    this.path = path;
    this.possibleTokTypes = [];
    this.nextProductionName = "";
    this.nextProductionOccurrence = 0;
    this.found = false;
    this.isAtEndOfPath = false;
  }
  startWalking() {
    this.found = false;
    if (this.path.ruleStack[0] !== this.topProd.name) {
      throw Error("The path does not start with the walker's top Rule!");
    }
    this.ruleStack = clone_default(this.path.ruleStack).reverse();
    this.occurrenceStack = clone_default(this.path.occurrenceStack).reverse();
    this.ruleStack.pop();
    this.occurrenceStack.pop();
    this.updateExpectedNext();
    this.walk(this.topProd);
    return this.possibleTokTypes;
  }
  walk(prod, prevRest = []) {
    if (!this.found) {
      super.walk(prod, prevRest);
    }
  }
  walkProdRef(refProd, currRest, prevRest) {
    if (refProd.referencedRule.name === this.nextProductionName && refProd.idx === this.nextProductionOccurrence) {
      const fullRest = currRest.concat(prevRest);
      this.updateExpectedNext();
      this.walk(refProd.referencedRule, fullRest);
    }
  }
  updateExpectedNext() {
    if (isEmpty_default(this.ruleStack)) {
      this.nextProductionName = "";
      this.nextProductionOccurrence = 0;
      this.isAtEndOfPath = true;
    } else {
      this.nextProductionName = this.ruleStack.pop();
      this.nextProductionOccurrence = this.occurrenceStack.pop();
    }
  }
};
var NextAfterTokenWalker = class extends AbstractNextPossibleTokensWalker {
  constructor(topProd, path) {
    super(topProd, path);
    this.path = path;
    this.nextTerminalName = "";
    this.nextTerminalOccurrence = 0;
    this.nextTerminalName = this.path.lastTok.name;
    this.nextTerminalOccurrence = this.path.lastTokOccurrence;
  }
  walkTerminal(terminal, currRest, prevRest) {
    if (this.isAtEndOfPath && terminal.terminalType.name === this.nextTerminalName && terminal.idx === this.nextTerminalOccurrence && !this.found) {
      const fullRest = currRest.concat(prevRest);
      const restProd = new Alternative({ definition: fullRest });
      this.possibleTokTypes = first(restProd);
      this.found = true;
    }
  }
};
var AbstractNextTerminalAfterProductionWalker = class extends RestWalker {
  constructor(topRule, occurrence) {
    super();
    this.topRule = topRule;
    this.occurrence = occurrence;
    this.result = {
      token: void 0,
      occurrence: void 0,
      isEndOfRule: void 0
    };
  }
  startWalking() {
    this.walk(this.topRule);
    return this.result;
  }
};
var NextTerminalAfterManyWalker = class extends AbstractNextTerminalAfterProductionWalker {
  walkMany(manyProd, currRest, prevRest) {
    if (manyProd.idx === this.occurrence) {
      const firstAfterMany = head_default(currRest.concat(prevRest));
      this.result.isEndOfRule = firstAfterMany === void 0;
      if (firstAfterMany instanceof Terminal) {
        this.result.token = firstAfterMany.terminalType;
        this.result.occurrence = firstAfterMany.idx;
      }
    } else {
      super.walkMany(manyProd, currRest, prevRest);
    }
  }
};
var NextTerminalAfterManySepWalker = class extends AbstractNextTerminalAfterProductionWalker {
  walkManySep(manySepProd, currRest, prevRest) {
    if (manySepProd.idx === this.occurrence) {
      const firstAfterManySep = head_default(currRest.concat(prevRest));
      this.result.isEndOfRule = firstAfterManySep === void 0;
      if (firstAfterManySep instanceof Terminal) {
        this.result.token = firstAfterManySep.terminalType;
        this.result.occurrence = firstAfterManySep.idx;
      }
    } else {
      super.walkManySep(manySepProd, currRest, prevRest);
    }
  }
};
var NextTerminalAfterAtLeastOneWalker = class extends AbstractNextTerminalAfterProductionWalker {
  walkAtLeastOne(atLeastOneProd, currRest, prevRest) {
    if (atLeastOneProd.idx === this.occurrence) {
      const firstAfterAtLeastOne = head_default(currRest.concat(prevRest));
      this.result.isEndOfRule = firstAfterAtLeastOne === void 0;
      if (firstAfterAtLeastOne instanceof Terminal) {
        this.result.token = firstAfterAtLeastOne.terminalType;
        this.result.occurrence = firstAfterAtLeastOne.idx;
      }
    } else {
      super.walkAtLeastOne(atLeastOneProd, currRest, prevRest);
    }
  }
};
var NextTerminalAfterAtLeastOneSepWalker = class extends AbstractNextTerminalAfterProductionWalker {
  walkAtLeastOneSep(atleastOneSepProd, currRest, prevRest) {
    if (atleastOneSepProd.idx === this.occurrence) {
      const firstAfterfirstAfterAtLeastOneSep = head_default(currRest.concat(prevRest));
      this.result.isEndOfRule = firstAfterfirstAfterAtLeastOneSep === void 0;
      if (firstAfterfirstAfterAtLeastOneSep instanceof Terminal) {
        this.result.token = firstAfterfirstAfterAtLeastOneSep.terminalType;
        this.result.occurrence = firstAfterfirstAfterAtLeastOneSep.idx;
      }
    } else {
      super.walkAtLeastOneSep(atleastOneSepProd, currRest, prevRest);
    }
  }
};
function possiblePathsFrom(targetDef, maxLength, currPath = []) {
  currPath = clone_default(currPath);
  let result = [];
  let i = 0;
  function remainingPathWith(nextDef) {
    return nextDef.concat(drop_default(targetDef, i + 1));
  }
  function getAlternativesForProd(definition) {
    const alternatives = possiblePathsFrom(remainingPathWith(definition), maxLength, currPath);
    return result.concat(alternatives);
  }
  while (currPath.length < maxLength && i < targetDef.length) {
    const prod = targetDef[i];
    if (prod instanceof Alternative) {
      return getAlternativesForProd(prod.definition);
    } else if (prod instanceof NonTerminal) {
      return getAlternativesForProd(prod.definition);
    } else if (prod instanceof Option) {
      result = getAlternativesForProd(prod.definition);
    } else if (prod instanceof RepetitionMandatory) {
      const newDef = prod.definition.concat([
        new Repetition({
          definition: prod.definition
        })
      ]);
      return getAlternativesForProd(newDef);
    } else if (prod instanceof RepetitionMandatoryWithSeparator) {
      const newDef = [
        new Alternative({ definition: prod.definition }),
        new Repetition({
          definition: [new Terminal({ terminalType: prod.separator })].concat(prod.definition)
        })
      ];
      return getAlternativesForProd(newDef);
    } else if (prod instanceof RepetitionWithSeparator) {
      const newDef = prod.definition.concat([
        new Repetition({
          definition: [new Terminal({ terminalType: prod.separator })].concat(prod.definition)
        })
      ]);
      result = getAlternativesForProd(newDef);
    } else if (prod instanceof Repetition) {
      const newDef = prod.definition.concat([
        new Repetition({
          definition: prod.definition
        })
      ]);
      result = getAlternativesForProd(newDef);
    } else if (prod instanceof Alternation) {
      forEach_default(prod.definition, (currAlt) => {
        if (isEmpty_default(currAlt.definition) === false) {
          result = getAlternativesForProd(currAlt.definition);
        }
      });
      return result;
    } else if (prod instanceof Terminal) {
      currPath.push(prod.terminalType);
    } else {
      throw Error("non exhaustive match");
    }
    i++;
  }
  result.push({
    partialPath: currPath,
    suffixDef: drop_default(targetDef, i)
  });
  return result;
}
function nextPossibleTokensAfter(initialDef, tokenVector, tokMatcher, maxLookAhead) {
  const EXIT_NON_TERMINAL = "EXIT_NONE_TERMINAL";
  const EXIT_NON_TERMINAL_ARR = [EXIT_NON_TERMINAL];
  const EXIT_ALTERNATIVE = "EXIT_ALTERNATIVE";
  let foundCompletePath = false;
  const tokenVectorLength = tokenVector.length;
  const minimalAlternativesIndex = tokenVectorLength - maxLookAhead - 1;
  const result = [];
  const possiblePaths = [];
  possiblePaths.push({
    idx: -1,
    def: initialDef,
    ruleStack: [],
    occurrenceStack: []
  });
  while (!isEmpty_default(possiblePaths)) {
    const currPath = possiblePaths.pop();
    if (currPath === EXIT_ALTERNATIVE) {
      if (foundCompletePath && last_default(possiblePaths).idx <= minimalAlternativesIndex) {
        possiblePaths.pop();
      }
      continue;
    }
    const currDef = currPath.def;
    const currIdx = currPath.idx;
    const currRuleStack = currPath.ruleStack;
    const currOccurrenceStack = currPath.occurrenceStack;
    if (isEmpty_default(currDef)) {
      continue;
    }
    const prod = currDef[0];
    if (prod === EXIT_NON_TERMINAL) {
      const nextPath = {
        idx: currIdx,
        def: drop_default(currDef),
        ruleStack: dropRight_default(currRuleStack),
        occurrenceStack: dropRight_default(currOccurrenceStack)
      };
      possiblePaths.push(nextPath);
    } else if (prod instanceof Terminal) {
      if (currIdx < tokenVectorLength - 1) {
        const nextIdx = currIdx + 1;
        const actualToken = tokenVector[nextIdx];
        if (tokMatcher(actualToken, prod.terminalType)) {
          const nextPath = {
            idx: nextIdx,
            def: drop_default(currDef),
            ruleStack: currRuleStack,
            occurrenceStack: currOccurrenceStack
          };
          possiblePaths.push(nextPath);
        }
      } else if (currIdx === tokenVectorLength - 1) {
        result.push({
          nextTokenType: prod.terminalType,
          nextTokenOccurrence: prod.idx,
          ruleStack: currRuleStack,
          occurrenceStack: currOccurrenceStack
        });
        foundCompletePath = true;
      } else {
        throw Error("non exhaustive match");
      }
    } else if (prod instanceof NonTerminal) {
      const newRuleStack = clone_default(currRuleStack);
      newRuleStack.push(prod.nonTerminalName);
      const newOccurrenceStack = clone_default(currOccurrenceStack);
      newOccurrenceStack.push(prod.idx);
      const nextPath = {
        idx: currIdx,
        def: prod.definition.concat(EXIT_NON_TERMINAL_ARR, drop_default(currDef)),
        ruleStack: newRuleStack,
        occurrenceStack: newOccurrenceStack
      };
      possiblePaths.push(nextPath);
    } else if (prod instanceof Option) {
      const nextPathWithout = {
        idx: currIdx,
        def: drop_default(currDef),
        ruleStack: currRuleStack,
        occurrenceStack: currOccurrenceStack
      };
      possiblePaths.push(nextPathWithout);
      possiblePaths.push(EXIT_ALTERNATIVE);
      const nextPathWith = {
        idx: currIdx,
        def: prod.definition.concat(drop_default(currDef)),
        ruleStack: currRuleStack,
        occurrenceStack: currOccurrenceStack
      };
      possiblePaths.push(nextPathWith);
    } else if (prod instanceof RepetitionMandatory) {
      const secondIteration = new Repetition({
        definition: prod.definition,
        idx: prod.idx
      });
      const nextDef = prod.definition.concat([secondIteration], drop_default(currDef));
      const nextPath = {
        idx: currIdx,
        def: nextDef,
        ruleStack: currRuleStack,
        occurrenceStack: currOccurrenceStack
      };
      possiblePaths.push(nextPath);
    } else if (prod instanceof RepetitionMandatoryWithSeparator) {
      const separatorGast = new Terminal({
        terminalType: prod.separator
      });
      const secondIteration = new Repetition({
        definition: [separatorGast].concat(prod.definition),
        idx: prod.idx
      });
      const nextDef = prod.definition.concat([secondIteration], drop_default(currDef));
      const nextPath = {
        idx: currIdx,
        def: nextDef,
        ruleStack: currRuleStack,
        occurrenceStack: currOccurrenceStack
      };
      possiblePaths.push(nextPath);
    } else if (prod instanceof RepetitionWithSeparator) {
      const nextPathWithout = {
        idx: currIdx,
        def: drop_default(currDef),
        ruleStack: currRuleStack,
        occurrenceStack: currOccurrenceStack
      };
      possiblePaths.push(nextPathWithout);
      possiblePaths.push(EXIT_ALTERNATIVE);
      const separatorGast = new Terminal({
        terminalType: prod.separator
      });
      const nthRepetition = new Repetition({
        definition: [separatorGast].concat(prod.definition),
        idx: prod.idx
      });
      const nextDef = prod.definition.concat([nthRepetition], drop_default(currDef));
      const nextPathWith = {
        idx: currIdx,
        def: nextDef,
        ruleStack: currRuleStack,
        occurrenceStack: currOccurrenceStack
      };
      possiblePaths.push(nextPathWith);
    } else if (prod instanceof Repetition) {
      const nextPathWithout = {
        idx: currIdx,
        def: drop_default(currDef),
        ruleStack: currRuleStack,
        occurrenceStack: currOccurrenceStack
      };
      possiblePaths.push(nextPathWithout);
      possiblePaths.push(EXIT_ALTERNATIVE);
      const nthRepetition = new Repetition({
        definition: prod.definition,
        idx: prod.idx
      });
      const nextDef = prod.definition.concat([nthRepetition], drop_default(currDef));
      const nextPathWith = {
        idx: currIdx,
        def: nextDef,
        ruleStack: currRuleStack,
        occurrenceStack: currOccurrenceStack
      };
      possiblePaths.push(nextPathWith);
    } else if (prod instanceof Alternation) {
      for (let i = prod.definition.length - 1; i >= 0; i--) {
        const currAlt = prod.definition[i];
        const currAltPath = {
          idx: currIdx,
          def: currAlt.definition.concat(drop_default(currDef)),
          ruleStack: currRuleStack,
          occurrenceStack: currOccurrenceStack
        };
        possiblePaths.push(currAltPath);
        possiblePaths.push(EXIT_ALTERNATIVE);
      }
    } else if (prod instanceof Alternative) {
      possiblePaths.push({
        idx: currIdx,
        def: prod.definition.concat(drop_default(currDef)),
        ruleStack: currRuleStack,
        occurrenceStack: currOccurrenceStack
      });
    } else if (prod instanceof Rule) {
      possiblePaths.push(expandTopLevelRule(prod, currIdx, currRuleStack, currOccurrenceStack));
    } else {
      throw Error("non exhaustive match");
    }
  }
  return result;
}
function expandTopLevelRule(topRule, currIdx, currRuleStack, currOccurrenceStack) {
  const newRuleStack = clone_default(currRuleStack);
  newRuleStack.push(topRule.name);
  const newCurrOccurrenceStack = clone_default(currOccurrenceStack);
  newCurrOccurrenceStack.push(1);
  return {
    idx: currIdx,
    def: topRule.definition,
    ruleStack: newRuleStack,
    occurrenceStack: newCurrOccurrenceStack
  };
}

// node_modules/chevrotain/lib/src/parse/grammar/lookahead.js
var PROD_TYPE;
(function(PROD_TYPE2) {
  PROD_TYPE2[PROD_TYPE2["OPTION"] = 0] = "OPTION";
  PROD_TYPE2[PROD_TYPE2["REPETITION"] = 1] = "REPETITION";
  PROD_TYPE2[PROD_TYPE2["REPETITION_MANDATORY"] = 2] = "REPETITION_MANDATORY";
  PROD_TYPE2[PROD_TYPE2["REPETITION_MANDATORY_WITH_SEPARATOR"] = 3] = "REPETITION_MANDATORY_WITH_SEPARATOR";
  PROD_TYPE2[PROD_TYPE2["REPETITION_WITH_SEPARATOR"] = 4] = "REPETITION_WITH_SEPARATOR";
  PROD_TYPE2[PROD_TYPE2["ALTERNATION"] = 5] = "ALTERNATION";
})(PROD_TYPE || (PROD_TYPE = {}));
function getProdType(prod) {
  if (prod instanceof Option || prod === "Option") {
    return PROD_TYPE.OPTION;
  } else if (prod instanceof Repetition || prod === "Repetition") {
    return PROD_TYPE.REPETITION;
  } else if (prod instanceof RepetitionMandatory || prod === "RepetitionMandatory") {
    return PROD_TYPE.REPETITION_MANDATORY;
  } else if (prod instanceof RepetitionMandatoryWithSeparator || prod === "RepetitionMandatoryWithSeparator") {
    return PROD_TYPE.REPETITION_MANDATORY_WITH_SEPARATOR;
  } else if (prod instanceof RepetitionWithSeparator || prod === "RepetitionWithSeparator") {
    return PROD_TYPE.REPETITION_WITH_SEPARATOR;
  } else if (prod instanceof Alternation || prod === "Alternation") {
    return PROD_TYPE.ALTERNATION;
  } else {
    throw Error("non exhaustive match");
  }
}
function buildLookaheadFuncForOr(occurrence, ruleGrammar, maxLookahead, hasPredicates, dynamicTokensEnabled, laFuncBuilder) {
  const lookAheadPaths = getLookaheadPathsForOr(occurrence, ruleGrammar, maxLookahead);
  const tokenMatcher2 = areTokenCategoriesNotUsed(lookAheadPaths) ? tokenStructuredMatcherNoCategories : tokenStructuredMatcher;
  return laFuncBuilder(lookAheadPaths, hasPredicates, tokenMatcher2, dynamicTokensEnabled);
}
function buildLookaheadFuncForOptionalProd(occurrence, ruleGrammar, k, dynamicTokensEnabled, prodType, lookaheadBuilder) {
  const lookAheadPaths = getLookaheadPathsForOptionalProd(occurrence, ruleGrammar, prodType, k);
  const tokenMatcher2 = areTokenCategoriesNotUsed(lookAheadPaths) ? tokenStructuredMatcherNoCategories : tokenStructuredMatcher;
  return lookaheadBuilder(lookAheadPaths[0], tokenMatcher2, dynamicTokensEnabled);
}
function buildAlternativesLookAheadFunc(alts, hasPredicates, tokenMatcher2, dynamicTokensEnabled) {
  const numOfAlts = alts.length;
  const areAllOneTokenLookahead = every_default(alts, (currAlt) => {
    return every_default(currAlt, (currPath) => {
      return currPath.length === 1;
    });
  });
  if (hasPredicates) {
    return function(orAlts) {
      const predicates = map_default(orAlts, (currAlt) => currAlt.GATE);
      for (let t = 0; t < numOfAlts; t++) {
        const currAlt = alts[t];
        const currNumOfPaths = currAlt.length;
        const currPredicate = predicates[t];
        if (currPredicate !== void 0 && currPredicate.call(this) === false) {
          continue;
        }
        nextPath: for (let j = 0; j < currNumOfPaths; j++) {
          const currPath = currAlt[j];
          const currPathLength = currPath.length;
          for (let i = 0; i < currPathLength; i++) {
            const nextToken = this.LA_FAST(i + 1);
            if (tokenMatcher2(nextToken, currPath[i]) === false) {
              continue nextPath;
            }
          }
          return t;
        }
      }
      return void 0;
    };
  } else if (areAllOneTokenLookahead && !dynamicTokensEnabled) {
    const singleTokenAlts = map_default(alts, (currAlt) => {
      return flatten_default(currAlt);
    });
    const choiceToAlt = reduce_default(singleTokenAlts, (result, currAlt, idx) => {
      forEach_default(currAlt, (currTokType) => {
        if (!has_default(result, currTokType.tokenTypeIdx)) {
          result[currTokType.tokenTypeIdx] = idx;
        }
        forEach_default(currTokType.categoryMatches, (currExtendingType) => {
          if (!has_default(result, currExtendingType)) {
            result[currExtendingType] = idx;
          }
        });
      });
      return result;
    }, {});
    return function() {
      const nextToken = this.LA_FAST(1);
      return choiceToAlt[nextToken.tokenTypeIdx];
    };
  } else {
    return function() {
      for (let t = 0; t < numOfAlts; t++) {
        const currAlt = alts[t];
        const currNumOfPaths = currAlt.length;
        nextPath: for (let j = 0; j < currNumOfPaths; j++) {
          const currPath = currAlt[j];
          const currPathLength = currPath.length;
          for (let i = 0; i < currPathLength; i++) {
            const nextToken = this.LA_FAST(i + 1);
            if (tokenMatcher2(nextToken, currPath[i]) === false) {
              continue nextPath;
            }
          }
          return t;
        }
      }
      return void 0;
    };
  }
}
function buildSingleAlternativeLookaheadFunction(alt, tokenMatcher2, dynamicTokensEnabled) {
  const areAllOneTokenLookahead = every_default(alt, (currPath) => {
    return currPath.length === 1;
  });
  const numOfPaths = alt.length;
  if (areAllOneTokenLookahead && !dynamicTokensEnabled) {
    const singleTokensTypes = flatten_default(alt);
    if (singleTokensTypes.length === 1 && isEmpty_default(singleTokensTypes[0].categoryMatches)) {
      const expectedTokenType = singleTokensTypes[0];
      const expectedTokenUniqueKey = expectedTokenType.tokenTypeIdx;
      return function() {
        return this.LA_FAST(1).tokenTypeIdx === expectedTokenUniqueKey;
      };
    } else {
      const choiceToAlt = reduce_default(singleTokensTypes, (result, currTokType, idx) => {
        result[currTokType.tokenTypeIdx] = true;
        forEach_default(currTokType.categoryMatches, (currExtendingType) => {
          result[currExtendingType] = true;
        });
        return result;
      }, []);
      return function() {
        const nextToken = this.LA_FAST(1);
        return choiceToAlt[nextToken.tokenTypeIdx] === true;
      };
    }
  } else {
    return function() {
      nextPath: for (let j = 0; j < numOfPaths; j++) {
        const currPath = alt[j];
        const currPathLength = currPath.length;
        for (let i = 0; i < currPathLength; i++) {
          const nextToken = this.LA_FAST(i + 1);
          if (tokenMatcher2(nextToken, currPath[i]) === false) {
            continue nextPath;
          }
        }
        return true;
      }
      return false;
    };
  }
}
var RestDefinitionFinderWalker = class extends RestWalker {
  constructor(topProd, targetOccurrence, targetProdType) {
    super();
    this.topProd = topProd;
    this.targetOccurrence = targetOccurrence;
    this.targetProdType = targetProdType;
  }
  startWalking() {
    this.walk(this.topProd);
    return this.restDef;
  }
  checkIsTarget(node, expectedProdType, currRest, prevRest) {
    if (node.idx === this.targetOccurrence && this.targetProdType === expectedProdType) {
      this.restDef = currRest.concat(prevRest);
      return true;
    }
    return false;
  }
  walkOption(optionProd, currRest, prevRest) {
    if (!this.checkIsTarget(optionProd, PROD_TYPE.OPTION, currRest, prevRest)) {
      super.walkOption(optionProd, currRest, prevRest);
    }
  }
  walkAtLeastOne(atLeastOneProd, currRest, prevRest) {
    if (!this.checkIsTarget(atLeastOneProd, PROD_TYPE.REPETITION_MANDATORY, currRest, prevRest)) {
      super.walkOption(atLeastOneProd, currRest, prevRest);
    }
  }
  walkAtLeastOneSep(atLeastOneSepProd, currRest, prevRest) {
    if (!this.checkIsTarget(atLeastOneSepProd, PROD_TYPE.REPETITION_MANDATORY_WITH_SEPARATOR, currRest, prevRest)) {
      super.walkOption(atLeastOneSepProd, currRest, prevRest);
    }
  }
  walkMany(manyProd, currRest, prevRest) {
    if (!this.checkIsTarget(manyProd, PROD_TYPE.REPETITION, currRest, prevRest)) {
      super.walkOption(manyProd, currRest, prevRest);
    }
  }
  walkManySep(manySepProd, currRest, prevRest) {
    if (!this.checkIsTarget(manySepProd, PROD_TYPE.REPETITION_WITH_SEPARATOR, currRest, prevRest)) {
      super.walkOption(manySepProd, currRest, prevRest);
    }
  }
};
var InsideDefinitionFinderVisitor = class extends GAstVisitor {
  constructor(targetOccurrence, targetProdType, targetRef) {
    super();
    this.targetOccurrence = targetOccurrence;
    this.targetProdType = targetProdType;
    this.targetRef = targetRef;
    this.result = [];
  }
  checkIsTarget(node, expectedProdName) {
    if (node.idx === this.targetOccurrence && this.targetProdType === expectedProdName && (this.targetRef === void 0 || node === this.targetRef)) {
      this.result = node.definition;
    }
  }
  visitOption(node) {
    this.checkIsTarget(node, PROD_TYPE.OPTION);
  }
  visitRepetition(node) {
    this.checkIsTarget(node, PROD_TYPE.REPETITION);
  }
  visitRepetitionMandatory(node) {
    this.checkIsTarget(node, PROD_TYPE.REPETITION_MANDATORY);
  }
  visitRepetitionMandatoryWithSeparator(node) {
    this.checkIsTarget(node, PROD_TYPE.REPETITION_MANDATORY_WITH_SEPARATOR);
  }
  visitRepetitionWithSeparator(node) {
    this.checkIsTarget(node, PROD_TYPE.REPETITION_WITH_SEPARATOR);
  }
  visitAlternation(node) {
    this.checkIsTarget(node, PROD_TYPE.ALTERNATION);
  }
};
function initializeArrayOfArrays(size) {
  const result = new Array(size);
  for (let i = 0; i < size; i++) {
    result[i] = [];
  }
  return result;
}
function pathToHashKeys(path) {
  let keys2 = [""];
  for (let i = 0; i < path.length; i++) {
    const tokType = path[i];
    const longerKeys = [];
    for (let j = 0; j < keys2.length; j++) {
      const currShorterKey = keys2[j];
      longerKeys.push(currShorterKey + "_" + tokType.tokenTypeIdx);
      for (let t = 0; t < tokType.categoryMatches.length; t++) {
        const categoriesKeySuffix = "_" + tokType.categoryMatches[t];
        longerKeys.push(currShorterKey + categoriesKeySuffix);
      }
    }
    keys2 = longerKeys;
  }
  return keys2;
}
function isUniquePrefixHash(altKnownPathsKeys, searchPathKeys, idx) {
  for (let currAltIdx = 0; currAltIdx < altKnownPathsKeys.length; currAltIdx++) {
    if (currAltIdx === idx) {
      continue;
    }
    const otherAltKnownPathsKeys = altKnownPathsKeys[currAltIdx];
    for (let searchIdx = 0; searchIdx < searchPathKeys.length; searchIdx++) {
      const searchKey = searchPathKeys[searchIdx];
      if (otherAltKnownPathsKeys[searchKey] === true) {
        return false;
      }
    }
  }
  return true;
}
function lookAheadSequenceFromAlternatives(altsDefs, k) {
  const partialAlts = map_default(altsDefs, (currAlt) => possiblePathsFrom([currAlt], 1));
  const finalResult = initializeArrayOfArrays(partialAlts.length);
  const altsHashes = map_default(partialAlts, (currAltPaths) => {
    const dict = {};
    forEach_default(currAltPaths, (item2) => {
      const keys2 = pathToHashKeys(item2.partialPath);
      forEach_default(keys2, (currKey) => {
        dict[currKey] = true;
      });
    });
    return dict;
  });
  let newData = partialAlts;
  for (let pathLength = 1; pathLength <= k; pathLength++) {
    const currDataset = newData;
    newData = initializeArrayOfArrays(currDataset.length);
    for (let altIdx = 0; altIdx < currDataset.length; altIdx++) {
      const currAltPathsAndSuffixes = currDataset[altIdx];
      for (let currPathIdx = 0; currPathIdx < currAltPathsAndSuffixes.length; currPathIdx++) {
        const currPathPrefix = currAltPathsAndSuffixes[currPathIdx].partialPath;
        const suffixDef = currAltPathsAndSuffixes[currPathIdx].suffixDef;
        const prefixKeys = pathToHashKeys(currPathPrefix);
        const isUnique = isUniquePrefixHash(altsHashes, prefixKeys, altIdx);
        if (isUnique || isEmpty_default(suffixDef) || currPathPrefix.length === k) {
          const currAltResult = finalResult[altIdx];
          if (containsPath(currAltResult, currPathPrefix) === false) {
            currAltResult.push(currPathPrefix);
            for (let j = 0; j < prefixKeys.length; j++) {
              const currKey = prefixKeys[j];
              altsHashes[altIdx][currKey] = true;
            }
          }
        } else {
          const newPartialPathsAndSuffixes = possiblePathsFrom(suffixDef, pathLength + 1, currPathPrefix);
          newData[altIdx] = newData[altIdx].concat(newPartialPathsAndSuffixes);
          forEach_default(newPartialPathsAndSuffixes, (item2) => {
            const prefixKeys2 = pathToHashKeys(item2.partialPath);
            forEach_default(prefixKeys2, (key) => {
              altsHashes[altIdx][key] = true;
            });
          });
        }
      }
    }
  }
  return finalResult;
}
function getLookaheadPathsForOr(occurrence, ruleGrammar, k, orProd) {
  const visitor = new InsideDefinitionFinderVisitor(occurrence, PROD_TYPE.ALTERNATION, orProd);
  ruleGrammar.accept(visitor);
  return lookAheadSequenceFromAlternatives(visitor.result, k);
}
function getLookaheadPathsForOptionalProd(occurrence, ruleGrammar, prodType, k) {
  const insideDefVisitor = new InsideDefinitionFinderVisitor(occurrence, prodType);
  ruleGrammar.accept(insideDefVisitor);
  const insideDef = insideDefVisitor.result;
  const afterDefWalker = new RestDefinitionFinderWalker(ruleGrammar, occurrence, prodType);
  const afterDef = afterDefWalker.startWalking();
  const insideFlat = new Alternative({ definition: insideDef });
  const afterFlat = new Alternative({ definition: afterDef });
  return lookAheadSequenceFromAlternatives([insideFlat, afterFlat], k);
}
function containsPath(alternative, searchPath) {
  compareOtherPath: for (let i = 0; i < alternative.length; i++) {
    const otherPath = alternative[i];
    if (otherPath.length !== searchPath.length) {
      continue;
    }
    for (let j = 0; j < otherPath.length; j++) {
      const searchTok = searchPath[j];
      const otherTok = otherPath[j];
      const matchingTokens = searchTok === otherTok || otherTok.categoryMatchesMap[searchTok.tokenTypeIdx] !== void 0;
      if (matchingTokens === false) {
        continue compareOtherPath;
      }
    }
    return true;
  }
  return false;
}
function isStrictPrefixOfPath(prefix, other) {
  return prefix.length < other.length && every_default(prefix, (tokType, idx) => {
    const otherTokType = other[idx];
    return tokType === otherTokType || otherTokType.categoryMatchesMap[tokType.tokenTypeIdx];
  });
}
function areTokenCategoriesNotUsed(lookAheadPaths) {
  return every_default(lookAheadPaths, (singleAltPaths) => every_default(singleAltPaths, (singlePath) => every_default(singlePath, (token2) => isEmpty_default(token2.categoryMatches))));
}

// node_modules/chevrotain/lib/src/parse/grammar/checks.js
function validateLookahead(options2) {
  const lookaheadValidationErrorMessages = options2.lookaheadStrategy.validate({
    rules: options2.rules,
    tokenTypes: options2.tokenTypes,
    grammarName: options2.grammarName
  });
  return map_default(lookaheadValidationErrorMessages, (errorMessage) => Object.assign({ type: ParserDefinitionErrorType.CUSTOM_LOOKAHEAD_VALIDATION }, errorMessage));
}
function validateGrammar(topLevels, tokenTypes, errMsgProvider, grammarName) {
  const duplicateErrors = flatMap_default(topLevels, (currTopLevel) => validateDuplicateProductions(currTopLevel, errMsgProvider));
  const termsNamespaceConflictErrors = checkTerminalAndNoneTerminalsNameSpace(topLevels, tokenTypes, errMsgProvider);
  const tooManyAltsErrors = flatMap_default(topLevels, (curRule) => validateTooManyAlts(curRule, errMsgProvider));
  const duplicateRulesError = flatMap_default(topLevels, (curRule) => validateRuleDoesNotAlreadyExist(curRule, topLevels, grammarName, errMsgProvider));
  return duplicateErrors.concat(termsNamespaceConflictErrors, tooManyAltsErrors, duplicateRulesError);
}
function validateDuplicateProductions(topLevelRule, errMsgProvider) {
  const collectorVisitor2 = new OccurrenceValidationCollector();
  topLevelRule.accept(collectorVisitor2);
  const allRuleProductions = collectorVisitor2.allProductions;
  const productionGroups = groupBy_default(allRuleProductions, identifyProductionForDuplicates);
  const duplicates = pickBy_default(productionGroups, (currGroup) => {
    return currGroup.length > 1;
  });
  const errors = map_default(values_default(duplicates), (currDuplicates) => {
    const firstProd = head_default(currDuplicates);
    const msg = errMsgProvider.buildDuplicateFoundError(topLevelRule, currDuplicates);
    const dslName = getProductionDslName(firstProd);
    const defError = {
      message: msg,
      type: ParserDefinitionErrorType.DUPLICATE_PRODUCTIONS,
      ruleName: topLevelRule.name,
      dslName,
      occurrence: firstProd.idx
    };
    const param = getExtraProductionArgument(firstProd);
    if (param) {
      defError.parameter = param;
    }
    return defError;
  });
  return errors;
}
function identifyProductionForDuplicates(prod) {
  return `${getProductionDslName(prod)}_#_${prod.idx}_#_${getExtraProductionArgument(prod)}`;
}
function getExtraProductionArgument(prod) {
  if (prod instanceof Terminal) {
    return prod.terminalType.name;
  } else if (prod instanceof NonTerminal) {
    return prod.nonTerminalName;
  } else {
    return "";
  }
}
var OccurrenceValidationCollector = class extends GAstVisitor {
  constructor() {
    super(...arguments);
    this.allProductions = [];
  }
  visitNonTerminal(subrule) {
    this.allProductions.push(subrule);
  }
  visitOption(option) {
    this.allProductions.push(option);
  }
  visitRepetitionWithSeparator(manySep) {
    this.allProductions.push(manySep);
  }
  visitRepetitionMandatory(atLeastOne) {
    this.allProductions.push(atLeastOne);
  }
  visitRepetitionMandatoryWithSeparator(atLeastOneSep) {
    this.allProductions.push(atLeastOneSep);
  }
  visitRepetition(many) {
    this.allProductions.push(many);
  }
  visitAlternation(or) {
    this.allProductions.push(or);
  }
  visitTerminal(terminal) {
    this.allProductions.push(terminal);
  }
};
function validateRuleDoesNotAlreadyExist(rule, allRules, className, errMsgProvider) {
  const errors = [];
  const occurrences = reduce_default(allRules, (result, curRule) => {
    if (curRule.name === rule.name) {
      return result + 1;
    }
    return result;
  }, 0);
  if (occurrences > 1) {
    const errMsg = errMsgProvider.buildDuplicateRuleNameError({
      topLevelRule: rule,
      grammarName: className
    });
    errors.push({
      message: errMsg,
      type: ParserDefinitionErrorType.DUPLICATE_RULE_NAME,
      ruleName: rule.name
    });
  }
  return errors;
}
function validateRuleIsOverridden(ruleName, definedRulesNames, className) {
  const errors = [];
  let errMsg;
  if (!includes_default(definedRulesNames, ruleName)) {
    errMsg = `Invalid rule override, rule: ->${ruleName}<- cannot be overridden in the grammar: ->${className}<-as it is not defined in any of the super grammars `;
    errors.push({
      message: errMsg,
      type: ParserDefinitionErrorType.INVALID_RULE_OVERRIDE,
      ruleName
    });
  }
  return errors;
}
function validateNoLeftRecursion(topRule, currRule, errMsgProvider, path = []) {
  const errors = [];
  const nextNonTerminals = getFirstNoneTerminal(currRule.definition);
  if (isEmpty_default(nextNonTerminals)) {
    return [];
  } else {
    const ruleName = topRule.name;
    const foundLeftRecursion = includes_default(nextNonTerminals, topRule);
    if (foundLeftRecursion) {
      errors.push({
        message: errMsgProvider.buildLeftRecursionError({
          topLevelRule: topRule,
          leftRecursionPath: path
        }),
        type: ParserDefinitionErrorType.LEFT_RECURSION,
        ruleName
      });
    }
    const validNextSteps = difference_default(nextNonTerminals, path.concat([topRule]));
    const errorsFromNextSteps = flatMap_default(validNextSteps, (currRefRule) => {
      const newPath = clone_default(path);
      newPath.push(currRefRule);
      return validateNoLeftRecursion(topRule, currRefRule, errMsgProvider, newPath);
    });
    return errors.concat(errorsFromNextSteps);
  }
}
function getFirstNoneTerminal(definition) {
  let result = [];
  if (isEmpty_default(definition)) {
    return result;
  }
  const firstProd = head_default(definition);
  if (firstProd instanceof NonTerminal) {
    result.push(firstProd.referencedRule);
  } else if (firstProd instanceof Alternative || firstProd instanceof Option || firstProd instanceof RepetitionMandatory || firstProd instanceof RepetitionMandatoryWithSeparator || firstProd instanceof RepetitionWithSeparator || firstProd instanceof Repetition) {
    result = result.concat(getFirstNoneTerminal(firstProd.definition));
  } else if (firstProd instanceof Alternation) {
    result = flatten_default(map_default(firstProd.definition, (currSubDef) => getFirstNoneTerminal(currSubDef.definition)));
  } else if (firstProd instanceof Terminal) {
  } else {
    throw Error("non exhaustive match");
  }
  const isFirstOptional = isOptionalProd(firstProd);
  const hasMore = definition.length > 1;
  if (isFirstOptional && hasMore) {
    const rest = drop_default(definition);
    return result.concat(getFirstNoneTerminal(rest));
  } else {
    return result;
  }
}
var OrCollector = class extends GAstVisitor {
  constructor() {
    super(...arguments);
    this.alternations = [];
  }
  visitAlternation(node) {
    this.alternations.push(node);
  }
};
function validateEmptyOrAlternative(topLevelRule, errMsgProvider) {
  const orCollector = new OrCollector();
  topLevelRule.accept(orCollector);
  const ors = orCollector.alternations;
  const errors = flatMap_default(ors, (currOr) => {
    const exceptLast = dropRight_default(currOr.definition);
    return flatMap_default(exceptLast, (currAlternative, currAltIdx) => {
      const possibleFirstInAlt = nextPossibleTokensAfter([currAlternative], [], tokenStructuredMatcher, 1);
      if (isEmpty_default(possibleFirstInAlt)) {
        return [
          {
            message: errMsgProvider.buildEmptyAlternationError({
              topLevelRule,
              alternation: currOr,
              emptyChoiceIdx: currAltIdx
            }),
            type: ParserDefinitionErrorType.NONE_LAST_EMPTY_ALT,
            ruleName: topLevelRule.name,
            occurrence: currOr.idx,
            alternative: currAltIdx + 1
          }
        ];
      } else {
        return [];
      }
    });
  });
  return errors;
}
function validateAmbiguousAlternationAlternatives(topLevelRule, globalMaxLookahead, errMsgProvider) {
  const orCollector = new OrCollector();
  topLevelRule.accept(orCollector);
  let ors = orCollector.alternations;
  ors = reject_default(ors, (currOr) => currOr.ignoreAmbiguities === true);
  const errors = flatMap_default(ors, (currOr) => {
    const currOccurrence = currOr.idx;
    const actualMaxLookahead = currOr.maxLookahead || globalMaxLookahead;
    const alternatives = getLookaheadPathsForOr(currOccurrence, topLevelRule, actualMaxLookahead, currOr);
    const altsAmbiguityErrors = checkAlternativesAmbiguities(alternatives, currOr, topLevelRule, errMsgProvider);
    const altsPrefixAmbiguityErrors = checkPrefixAlternativesAmbiguities(alternatives, currOr, topLevelRule, errMsgProvider);
    return altsAmbiguityErrors.concat(altsPrefixAmbiguityErrors);
  });
  return errors;
}
var RepetitionCollector = class extends GAstVisitor {
  constructor() {
    super(...arguments);
    this.allProductions = [];
  }
  visitRepetitionWithSeparator(manySep) {
    this.allProductions.push(manySep);
  }
  visitRepetitionMandatory(atLeastOne) {
    this.allProductions.push(atLeastOne);
  }
  visitRepetitionMandatoryWithSeparator(atLeastOneSep) {
    this.allProductions.push(atLeastOneSep);
  }
  visitRepetition(many) {
    this.allProductions.push(many);
  }
};
function validateTooManyAlts(topLevelRule, errMsgProvider) {
  const orCollector = new OrCollector();
  topLevelRule.accept(orCollector);
  const ors = orCollector.alternations;
  const errors = flatMap_default(ors, (currOr) => {
    if (currOr.definition.length > 255) {
      return [
        {
          message: errMsgProvider.buildTooManyAlternativesError({
            topLevelRule,
            alternation: currOr
          }),
          type: ParserDefinitionErrorType.TOO_MANY_ALTS,
          ruleName: topLevelRule.name,
          occurrence: currOr.idx
        }
      ];
    } else {
      return [];
    }
  });
  return errors;
}
function validateSomeNonEmptyLookaheadPath(topLevelRules, maxLookahead, errMsgProvider) {
  const errors = [];
  forEach_default(topLevelRules, (currTopRule) => {
    const collectorVisitor2 = new RepetitionCollector();
    currTopRule.accept(collectorVisitor2);
    const allRuleProductions = collectorVisitor2.allProductions;
    forEach_default(allRuleProductions, (currProd) => {
      const prodType = getProdType(currProd);
      const actualMaxLookahead = currProd.maxLookahead || maxLookahead;
      const currOccurrence = currProd.idx;
      const paths = getLookaheadPathsForOptionalProd(currOccurrence, currTopRule, prodType, actualMaxLookahead);
      const pathsInsideProduction = paths[0];
      if (isEmpty_default(flatten_default(pathsInsideProduction))) {
        const errMsg = errMsgProvider.buildEmptyRepetitionError({
          topLevelRule: currTopRule,
          repetition: currProd
        });
        errors.push({
          message: errMsg,
          type: ParserDefinitionErrorType.NO_NON_EMPTY_LOOKAHEAD,
          ruleName: currTopRule.name
        });
      }
    });
  });
  return errors;
}
function checkAlternativesAmbiguities(alternatives, alternation, rule, errMsgProvider) {
  const foundAmbiguousPaths = [];
  const identicalAmbiguities = reduce_default(alternatives, (result, currAlt, currAltIdx) => {
    if (alternation.definition[currAltIdx].ignoreAmbiguities === true) {
      return result;
    }
    forEach_default(currAlt, (currPath) => {
      const altsCurrPathAppearsIn = [currAltIdx];
      forEach_default(alternatives, (currOtherAlt, currOtherAltIdx) => {
        if (currAltIdx !== currOtherAltIdx && containsPath(currOtherAlt, currPath) && // ignore (skip) ambiguities with this "other" alternative
        alternation.definition[currOtherAltIdx].ignoreAmbiguities !== true) {
          altsCurrPathAppearsIn.push(currOtherAltIdx);
        }
      });
      if (altsCurrPathAppearsIn.length > 1 && !containsPath(foundAmbiguousPaths, currPath)) {
        foundAmbiguousPaths.push(currPath);
        result.push({
          alts: altsCurrPathAppearsIn,
          path: currPath
        });
      }
    });
    return result;
  }, []);
  const currErrors = map_default(identicalAmbiguities, (currAmbDescriptor) => {
    const ambgIndices = map_default(currAmbDescriptor.alts, (currAltIdx) => currAltIdx + 1);
    const currMessage = errMsgProvider.buildAlternationAmbiguityError({
      topLevelRule: rule,
      alternation,
      ambiguityIndices: ambgIndices,
      prefixPath: currAmbDescriptor.path
    });
    return {
      message: currMessage,
      type: ParserDefinitionErrorType.AMBIGUOUS_ALTS,
      ruleName: rule.name,
      occurrence: alternation.idx,
      alternatives: currAmbDescriptor.alts
    };
  });
  return currErrors;
}
function checkPrefixAlternativesAmbiguities(alternatives, alternation, rule, errMsgProvider) {
  const pathsAndIndices = reduce_default(alternatives, (result, currAlt, idx) => {
    const currPathsAndIdx = map_default(currAlt, (currPath) => {
      return { idx, path: currPath };
    });
    return result.concat(currPathsAndIdx);
  }, []);
  const errors = compact_default(flatMap_default(pathsAndIndices, (currPathAndIdx) => {
    const alternativeGast = alternation.definition[currPathAndIdx.idx];
    if (alternativeGast.ignoreAmbiguities === true) {
      return [];
    }
    const targetIdx = currPathAndIdx.idx;
    const targetPath = currPathAndIdx.path;
    const prefixAmbiguitiesPathsAndIndices = filter_default(pathsAndIndices, (searchPathAndIdx) => {
      return (
        // ignore (skip) ambiguities with this "other" alternative
        alternation.definition[searchPathAndIdx.idx].ignoreAmbiguities !== true && searchPathAndIdx.idx < targetIdx && // checking for strict prefix because identical lookaheads
        // will be be detected using a different validation.
        isStrictPrefixOfPath(searchPathAndIdx.path, targetPath)
      );
    });
    const currPathPrefixErrors = map_default(prefixAmbiguitiesPathsAndIndices, (currAmbPathAndIdx) => {
      const ambgIndices = [currAmbPathAndIdx.idx + 1, targetIdx + 1];
      const occurrence = alternation.idx === 0 ? "" : alternation.idx;
      const message = errMsgProvider.buildAlternationPrefixAmbiguityError({
        topLevelRule: rule,
        alternation,
        ambiguityIndices: ambgIndices,
        prefixPath: currAmbPathAndIdx.path
      });
      return {
        message,
        type: ParserDefinitionErrorType.AMBIGUOUS_PREFIX_ALTS,
        ruleName: rule.name,
        occurrence,
        alternatives: ambgIndices
      };
    });
    return currPathPrefixErrors;
  }));
  return errors;
}
function checkTerminalAndNoneTerminalsNameSpace(topLevels, tokenTypes, errMsgProvider) {
  const errors = [];
  const tokenNames = map_default(tokenTypes, (currToken) => currToken.name);
  forEach_default(topLevels, (currRule) => {
    const currRuleName = currRule.name;
    if (includes_default(tokenNames, currRuleName)) {
      const errMsg = errMsgProvider.buildNamespaceConflictError(currRule);
      errors.push({
        message: errMsg,
        type: ParserDefinitionErrorType.CONFLICT_TOKENS_RULES_NAMESPACE,
        ruleName: currRuleName
      });
    }
  });
  return errors;
}

// node_modules/chevrotain/lib/src/parse/grammar/gast/gast_resolver_public.js
function resolveGrammar2(options2) {
  const actualOptions = defaults_default(options2, {
    errMsgProvider: defaultGrammarResolverErrorProvider
  });
  const topRulesTable = {};
  forEach_default(options2.rules, (rule) => {
    topRulesTable[rule.name] = rule;
  });
  return resolveGrammar(topRulesTable, actualOptions.errMsgProvider);
}
function validateGrammar2(options2) {
  options2 = defaults_default(options2, {
    errMsgProvider: defaultGrammarValidatorErrorProvider
  });
  return validateGrammar(options2.rules, options2.tokenTypes, options2.errMsgProvider, options2.grammarName);
}

// node_modules/chevrotain/lib/src/parse/exceptions_public.js
var MISMATCHED_TOKEN_EXCEPTION = "MismatchedTokenException";
var NO_VIABLE_ALT_EXCEPTION = "NoViableAltException";
var EARLY_EXIT_EXCEPTION = "EarlyExitException";
var NOT_ALL_INPUT_PARSED_EXCEPTION = "NotAllInputParsedException";
var RECOGNITION_EXCEPTION_NAMES = [
  MISMATCHED_TOKEN_EXCEPTION,
  NO_VIABLE_ALT_EXCEPTION,
  EARLY_EXIT_EXCEPTION,
  NOT_ALL_INPUT_PARSED_EXCEPTION
];
Object.freeze(RECOGNITION_EXCEPTION_NAMES);
function isRecognitionException(error) {
  return includes_default(RECOGNITION_EXCEPTION_NAMES, error.name);
}
var RecognitionException = class extends Error {
  constructor(message, token2) {
    super(message);
    this.token = token2;
    this.resyncedTokens = [];
    Object.setPrototypeOf(this, new.target.prototype);
    if (Error.captureStackTrace) {
      Error.captureStackTrace(this, this.constructor);
    }
  }
};
var MismatchedTokenException = class extends RecognitionException {
  constructor(message, token2, previousToken) {
    super(message, token2);
    this.previousToken = previousToken;
    this.name = MISMATCHED_TOKEN_EXCEPTION;
  }
};
var NoViableAltException = class extends RecognitionException {
  constructor(message, token2, previousToken) {
    super(message, token2);
    this.previousToken = previousToken;
    this.name = NO_VIABLE_ALT_EXCEPTION;
  }
};
var NotAllInputParsedException = class extends RecognitionException {
  constructor(message, token2) {
    super(message, token2);
    this.name = NOT_ALL_INPUT_PARSED_EXCEPTION;
  }
};
var EarlyExitException = class extends RecognitionException {
  constructor(message, token2, previousToken) {
    super(message, token2);
    this.previousToken = previousToken;
    this.name = EARLY_EXIT_EXCEPTION;
  }
};

// node_modules/chevrotain/lib/src/parse/parser/traits/recoverable.js
var EOF_FOLLOW_KEY = {};
var IN_RULE_RECOVERY_EXCEPTION = "InRuleRecoveryException";
var InRuleRecoveryException = class extends Error {
  constructor(message) {
    super(message);
    this.name = IN_RULE_RECOVERY_EXCEPTION;
  }
};
var Recoverable = class {
  initRecoverable(config) {
    this.firstAfterRepMap = {};
    this.resyncFollows = {};
    this.recoveryEnabled = has_default(config, "recoveryEnabled") ? config.recoveryEnabled : DEFAULT_PARSER_CONFIG.recoveryEnabled;
    if (this.recoveryEnabled) {
      this.attemptInRepetitionRecovery = attemptInRepetitionRecovery;
    }
  }
  getTokenToInsert(tokType) {
    const tokToInsert = createTokenInstance(tokType, "", NaN, NaN, NaN, NaN, NaN, NaN);
    tokToInsert.isInsertedInRecovery = true;
    return tokToInsert;
  }
  canTokenTypeBeInsertedInRecovery(tokType) {
    return true;
  }
  canTokenTypeBeDeletedInRecovery(tokType) {
    return true;
  }
  tryInRepetitionRecovery(grammarRule, grammarRuleArgs, lookAheadFunc, expectedTokType) {
    const reSyncTokType = this.findReSyncTokenType();
    const savedLexerState = this.exportLexerState();
    const resyncedTokens = [];
    let passedResyncPoint = false;
    const nextTokenWithoutResync = this.LA_FAST(1);
    let currToken = this.LA_FAST(1);
    const generateErrorMessage = () => {
      const previousToken = this.LA(0);
      const msg = this.errorMessageProvider.buildMismatchTokenMessage({
        expected: expectedTokType,
        actual: nextTokenWithoutResync,
        previous: previousToken,
        ruleName: this.getCurrRuleFullName()
      });
      const error = new MismatchedTokenException(msg, nextTokenWithoutResync, this.LA(0));
      error.resyncedTokens = dropRight_default(resyncedTokens);
      this.SAVE_ERROR(error);
    };
    while (!passedResyncPoint) {
      if (this.tokenMatcher(currToken, expectedTokType)) {
        generateErrorMessage();
        return;
      } else if (lookAheadFunc.call(this)) {
        generateErrorMessage();
        grammarRule.apply(this, grammarRuleArgs);
        return;
      } else if (this.tokenMatcher(currToken, reSyncTokType)) {
        passedResyncPoint = true;
      } else {
        currToken = this.SKIP_TOKEN();
        this.addToResyncTokens(currToken, resyncedTokens);
      }
    }
    this.importLexerState(savedLexerState);
  }
  shouldInRepetitionRecoveryBeTried(expectTokAfterLastMatch, nextTokIdx, notStuck) {
    if (notStuck === false) {
      return false;
    }
    if (this.tokenMatcher(this.LA_FAST(1), expectTokAfterLastMatch)) {
      return false;
    }
    if (this.isBackTracking()) {
      return false;
    }
    if (this.canPerformInRuleRecovery(expectTokAfterLastMatch, this.getFollowsForInRuleRecovery(expectTokAfterLastMatch, nextTokIdx))) {
      return false;
    }
    return true;
  }
  // Error Recovery functionality
  getFollowsForInRuleRecovery(tokType, tokIdxInRule) {
    const grammarPath = this.getCurrentGrammarPath(tokType, tokIdxInRule);
    const follows = this.getNextPossibleTokenTypes(grammarPath);
    return follows;
  }
  tryInRuleRecovery(expectedTokType, follows) {
    if (this.canRecoverWithSingleTokenInsertion(expectedTokType, follows)) {
      const tokToInsert = this.getTokenToInsert(expectedTokType);
      return tokToInsert;
    }
    if (this.canRecoverWithSingleTokenDeletion(expectedTokType)) {
      const nextTok = this.SKIP_TOKEN();
      this.consumeToken();
      return nextTok;
    }
    throw new InRuleRecoveryException("sad sad panda");
  }
  canPerformInRuleRecovery(expectedToken, follows) {
    return this.canRecoverWithSingleTokenInsertion(expectedToken, follows) || this.canRecoverWithSingleTokenDeletion(expectedToken);
  }
  canRecoverWithSingleTokenInsertion(expectedTokType, follows) {
    if (!this.canTokenTypeBeInsertedInRecovery(expectedTokType)) {
      return false;
    }
    if (isEmpty_default(follows)) {
      return false;
    }
    const mismatchedTok = this.LA_FAST(1);
    const isMisMatchedTokInFollows = find_default(follows, (possibleFollowsTokType) => {
      return this.tokenMatcher(mismatchedTok, possibleFollowsTokType);
    }) !== void 0;
    return isMisMatchedTokInFollows;
  }
  canRecoverWithSingleTokenDeletion(expectedTokType) {
    if (!this.canTokenTypeBeDeletedInRecovery(expectedTokType)) {
      return false;
    }
    const isNextTokenWhatIsExpected = this.tokenMatcher(
      // not using LA_FAST because LA(2) might be un-safe with maxLookahead=1
      // in some edge cases (?)
      this.LA(2),
      expectedTokType
    );
    return isNextTokenWhatIsExpected;
  }
  isInCurrentRuleReSyncSet(tokenTypeIdx) {
    const followKey = this.getCurrFollowKey();
    const currentRuleReSyncSet = this.getFollowSetFromFollowKey(followKey);
    return includes_default(currentRuleReSyncSet, tokenTypeIdx);
  }
  findReSyncTokenType() {
    const allPossibleReSyncTokTypes = this.flattenFollowSet();
    let nextToken = this.LA_FAST(1);
    let k = 2;
    while (true) {
      const foundMatch = find_default(allPossibleReSyncTokTypes, (resyncTokType) => {
        const canMatch = tokenMatcher(nextToken, resyncTokType);
        return canMatch;
      });
      if (foundMatch !== void 0) {
        return foundMatch;
      }
      nextToken = this.LA(k);
      k++;
    }
  }
  getCurrFollowKey() {
    if (this.RULE_STACK_IDX === 0) {
      return EOF_FOLLOW_KEY;
    }
    const currRuleShortName = this.currRuleShortName;
    const currRuleIdx = this.getLastExplicitRuleOccurrenceIndex();
    const prevRuleShortName = this.getPreviousExplicitRuleShortName();
    return {
      ruleName: this.shortRuleNameToFullName(currRuleShortName),
      idxInCallingRule: currRuleIdx,
      inRule: this.shortRuleNameToFullName(prevRuleShortName)
    };
  }
  buildFullFollowKeyStack() {
    const explicitRuleStack = this.RULE_STACK;
    const explicitOccurrenceStack = this.RULE_OCCURRENCE_STACK;
    const len = this.RULE_STACK_IDX + 1;
    const result = new Array(len);
    for (let idx = 0; idx < len; idx++) {
      if (idx === 0) {
        result[idx] = EOF_FOLLOW_KEY;
      } else {
        result[idx] = {
          ruleName: this.shortRuleNameToFullName(explicitRuleStack[idx]),
          idxInCallingRule: explicitOccurrenceStack[idx],
          inRule: this.shortRuleNameToFullName(explicitRuleStack[idx - 1])
        };
      }
    }
    return result;
  }
  flattenFollowSet() {
    const followStack = map_default(this.buildFullFollowKeyStack(), (currKey) => {
      return this.getFollowSetFromFollowKey(currKey);
    });
    return flatten_default(followStack);
  }
  getFollowSetFromFollowKey(followKey) {
    if (followKey === EOF_FOLLOW_KEY) {
      return [EOF];
    }
    const followName = followKey.ruleName + followKey.idxInCallingRule + IN + followKey.inRule;
    return this.resyncFollows[followName];
  }
  // It does not make any sense to include a virtual EOF token in the list of resynced tokens
  // as EOF does not really exist and thus does not contain any useful information (line/column numbers)
  addToResyncTokens(token2, resyncTokens) {
    if (!this.tokenMatcher(token2, EOF)) {
      resyncTokens.push(token2);
    }
    return resyncTokens;
  }
  reSyncTo(tokType) {
    const resyncedTokens = [];
    let nextTok = this.LA_FAST(1);
    while (this.tokenMatcher(nextTok, tokType) === false) {
      nextTok = this.SKIP_TOKEN();
      this.addToResyncTokens(nextTok, resyncedTokens);
    }
    return dropRight_default(resyncedTokens);
  }
  attemptInRepetitionRecovery(prodFunc, args, lookaheadFunc, dslMethodIdx, prodOccurrence, nextToksWalker, notStuck) {
  }
  getCurrentGrammarPath(tokType, tokIdxInRule) {
    const pathRuleStack = this.getHumanReadableRuleStack();
    const pathOccurrenceStack = this.RULE_OCCURRENCE_STACK.slice(0, this.RULE_OCCURRENCE_STACK_IDX + 1);
    const grammarPath = {
      ruleStack: pathRuleStack,
      occurrenceStack: pathOccurrenceStack,
      lastTok: tokType,
      lastTokOccurrence: tokIdxInRule
    };
    return grammarPath;
  }
  getHumanReadableRuleStack() {
    const len = this.RULE_STACK_IDX + 1;
    const result = new Array(len);
    for (let i = 0; i < len; i++) {
      result[i] = this.shortRuleNameToFullName(this.RULE_STACK[i]);
    }
    return result;
  }
};
function attemptInRepetitionRecovery(prodFunc, args, lookaheadFunc, dslMethodIdx, prodOccurrence, nextToksWalker, notStuck) {
  const key = this.getKeyForAutomaticLookahead(dslMethodIdx, prodOccurrence);
  let firstAfterRepInfo = this.firstAfterRepMap[key];
  if (firstAfterRepInfo === void 0) {
    const currRuleName = this.getCurrRuleFullName();
    const ruleGrammar = this.getGAstProductions()[currRuleName];
    const walker = new nextToksWalker(ruleGrammar, prodOccurrence);
    firstAfterRepInfo = walker.startWalking();
    this.firstAfterRepMap[key] = firstAfterRepInfo;
  }
  let expectTokAfterLastMatch = firstAfterRepInfo.token;
  let nextTokIdx = firstAfterRepInfo.occurrence;
  const isEndOfRule = firstAfterRepInfo.isEndOfRule;
  if (this.RULE_STACK_IDX === 0 && isEndOfRule && expectTokAfterLastMatch === void 0) {
    expectTokAfterLastMatch = EOF;
    nextTokIdx = 1;
  }
  if (expectTokAfterLastMatch === void 0 || nextTokIdx === void 0) {
    return;
  }
  if (this.shouldInRepetitionRecoveryBeTried(expectTokAfterLastMatch, nextTokIdx, notStuck)) {
    this.tryInRepetitionRecovery(prodFunc, args, lookaheadFunc, expectTokAfterLastMatch);
  }
}

// node_modules/chevrotain/lib/src/parse/grammar/keys.js
var BITS_FOR_METHOD_TYPE = 4;
var BITS_FOR_OCCURRENCE_IDX = 8;
var BITS_FOR_ALT_IDX = 8;
var OR_IDX = 1 << BITS_FOR_OCCURRENCE_IDX;
var OPTION_IDX = 2 << BITS_FOR_OCCURRENCE_IDX;
var MANY_IDX = 3 << BITS_FOR_OCCURRENCE_IDX;
var AT_LEAST_ONE_IDX = 4 << BITS_FOR_OCCURRENCE_IDX;
var MANY_SEP_IDX = 5 << BITS_FOR_OCCURRENCE_IDX;
var AT_LEAST_ONE_SEP_IDX = 6 << BITS_FOR_OCCURRENCE_IDX;
function getKeyForAutomaticLookahead(ruleIdx, dslMethodIdx, occurrence) {
  return occurrence | dslMethodIdx | ruleIdx;
}
var BITS_START_FOR_ALT_IDX = 32 - BITS_FOR_ALT_IDX;

// node_modules/chevrotain/lib/src/parse/grammar/llk_lookahead.js
var LLkLookaheadStrategy = class {
  constructor(options2) {
    var _a;
    this.maxLookahead = (_a = options2 === null || options2 === void 0 ? void 0 : options2.maxLookahead) !== null && _a !== void 0 ? _a : DEFAULT_PARSER_CONFIG.maxLookahead;
  }
  validate(options2) {
    const leftRecursionErrors = this.validateNoLeftRecursion(options2.rules);
    if (isEmpty_default(leftRecursionErrors)) {
      const emptyAltErrors = this.validateEmptyOrAlternatives(options2.rules);
      const ambiguousAltsErrors = this.validateAmbiguousAlternationAlternatives(options2.rules, this.maxLookahead);
      const emptyRepetitionErrors = this.validateSomeNonEmptyLookaheadPath(options2.rules, this.maxLookahead);
      const allErrors = [
        ...leftRecursionErrors,
        ...emptyAltErrors,
        ...ambiguousAltsErrors,
        ...emptyRepetitionErrors
      ];
      return allErrors;
    }
    return leftRecursionErrors;
  }
  validateNoLeftRecursion(rules) {
    return flatMap_default(rules, (currTopRule) => validateNoLeftRecursion(currTopRule, currTopRule, defaultGrammarValidatorErrorProvider));
  }
  validateEmptyOrAlternatives(rules) {
    return flatMap_default(rules, (currTopRule) => validateEmptyOrAlternative(currTopRule, defaultGrammarValidatorErrorProvider));
  }
  validateAmbiguousAlternationAlternatives(rules, maxLookahead) {
    return flatMap_default(rules, (currTopRule) => validateAmbiguousAlternationAlternatives(currTopRule, maxLookahead, defaultGrammarValidatorErrorProvider));
  }
  validateSomeNonEmptyLookaheadPath(rules, maxLookahead) {
    return validateSomeNonEmptyLookaheadPath(rules, maxLookahead, defaultGrammarValidatorErrorProvider);
  }
  buildLookaheadForAlternation(options2) {
    return buildLookaheadFuncForOr(options2.prodOccurrence, options2.rule, options2.maxLookahead, options2.hasPredicates, options2.dynamicTokensEnabled, buildAlternativesLookAheadFunc);
  }
  buildLookaheadForOptional(options2) {
    return buildLookaheadFuncForOptionalProd(options2.prodOccurrence, options2.rule, options2.maxLookahead, options2.dynamicTokensEnabled, getProdType(options2.prodType), buildSingleAlternativeLookaheadFunction);
  }
};

// node_modules/chevrotain/lib/src/parse/parser/traits/looksahead.js
var LooksAhead = class {
  initLooksAhead(config) {
    this.dynamicTokensEnabled = has_default(config, "dynamicTokensEnabled") ? config.dynamicTokensEnabled : DEFAULT_PARSER_CONFIG.dynamicTokensEnabled;
    this.maxLookahead = has_default(config, "maxLookahead") ? config.maxLookahead : DEFAULT_PARSER_CONFIG.maxLookahead;
    this.lookaheadStrategy = has_default(config, "lookaheadStrategy") ? config.lookaheadStrategy : new LLkLookaheadStrategy({ maxLookahead: this.maxLookahead });
    this.lookAheadFuncsCache = /* @__PURE__ */ new Map();
  }
  preComputeLookaheadFunctions(rules) {
    forEach_default(rules, (currRule) => {
      this.TRACE_INIT(`${currRule.name} Rule Lookahead`, () => {
        const { alternation, repetition, option, repetitionMandatory, repetitionMandatoryWithSeparator, repetitionWithSeparator } = collectMethods(currRule);
        forEach_default(alternation, (currProd) => {
          const prodIdx = currProd.idx === 0 ? "" : currProd.idx;
          this.TRACE_INIT(`${getProductionDslName(currProd)}${prodIdx}`, () => {
            const laFunc = this.lookaheadStrategy.buildLookaheadForAlternation({
              prodOccurrence: currProd.idx,
              rule: currRule,
              maxLookahead: currProd.maxLookahead || this.maxLookahead,
              hasPredicates: currProd.hasPredicates,
              dynamicTokensEnabled: this.dynamicTokensEnabled
            });
            const key = getKeyForAutomaticLookahead(this.fullRuleNameToShort[currRule.name], OR_IDX, currProd.idx);
            this.setLaFuncCache(key, laFunc);
          });
        });
        forEach_default(repetition, (currProd) => {
          this.computeLookaheadFunc(currRule, currProd.idx, MANY_IDX, "Repetition", currProd.maxLookahead, getProductionDslName(currProd));
        });
        forEach_default(option, (currProd) => {
          this.computeLookaheadFunc(currRule, currProd.idx, OPTION_IDX, "Option", currProd.maxLookahead, getProductionDslName(currProd));
        });
        forEach_default(repetitionMandatory, (currProd) => {
          this.computeLookaheadFunc(currRule, currProd.idx, AT_LEAST_ONE_IDX, "RepetitionMandatory", currProd.maxLookahead, getProductionDslName(currProd));
        });
        forEach_default(repetitionMandatoryWithSeparator, (currProd) => {
          this.computeLookaheadFunc(currRule, currProd.idx, AT_LEAST_ONE_SEP_IDX, "RepetitionMandatoryWithSeparator", currProd.maxLookahead, getProductionDslName(currProd));
        });
        forEach_default(repetitionWithSeparator, (currProd) => {
          this.computeLookaheadFunc(currRule, currProd.idx, MANY_SEP_IDX, "RepetitionWithSeparator", currProd.maxLookahead, getProductionDslName(currProd));
        });
      });
    });
  }
  computeLookaheadFunc(rule, prodOccurrence, prodKey, prodType, prodMaxLookahead, dslMethodName) {
    this.TRACE_INIT(`${dslMethodName}${prodOccurrence === 0 ? "" : prodOccurrence}`, () => {
      const laFunc = this.lookaheadStrategy.buildLookaheadForOptional({
        prodOccurrence,
        rule,
        maxLookahead: prodMaxLookahead || this.maxLookahead,
        dynamicTokensEnabled: this.dynamicTokensEnabled,
        prodType
      });
      const key = getKeyForAutomaticLookahead(this.fullRuleNameToShort[rule.name], prodKey, prodOccurrence);
      this.setLaFuncCache(key, laFunc);
    });
  }
  // this actually returns a number, but it is always used as a string (object prop key)
  getKeyForAutomaticLookahead(dslMethodIdx, occurrence) {
    return getKeyForAutomaticLookahead(this.currRuleShortName, dslMethodIdx, occurrence);
  }
  getLaFuncFromCache(key) {
    return this.lookAheadFuncsCache.get(key);
  }
  /* istanbul ignore next */
  setLaFuncCache(key, value2) {
    this.lookAheadFuncsCache.set(key, value2);
  }
};
var DslMethodsCollectorVisitor = class extends GAstVisitor {
  constructor() {
    super(...arguments);
    this.dslMethods = {
      option: [],
      alternation: [],
      repetition: [],
      repetitionWithSeparator: [],
      repetitionMandatory: [],
      repetitionMandatoryWithSeparator: []
    };
  }
  reset() {
    this.dslMethods = {
      option: [],
      alternation: [],
      repetition: [],
      repetitionWithSeparator: [],
      repetitionMandatory: [],
      repetitionMandatoryWithSeparator: []
    };
  }
  visitOption(option) {
    this.dslMethods.option.push(option);
  }
  visitRepetitionWithSeparator(manySep) {
    this.dslMethods.repetitionWithSeparator.push(manySep);
  }
  visitRepetitionMandatory(atLeastOne) {
    this.dslMethods.repetitionMandatory.push(atLeastOne);
  }
  visitRepetitionMandatoryWithSeparator(atLeastOneSep) {
    this.dslMethods.repetitionMandatoryWithSeparator.push(atLeastOneSep);
  }
  visitRepetition(many) {
    this.dslMethods.repetition.push(many);
  }
  visitAlternation(or) {
    this.dslMethods.alternation.push(or);
  }
};
var collectorVisitor = new DslMethodsCollectorVisitor();
function collectMethods(rule) {
  collectorVisitor.reset();
  rule.accept(collectorVisitor);
  const dslMethods = collectorVisitor.dslMethods;
  collectorVisitor.reset();
  return dslMethods;
}

// node_modules/chevrotain/lib/src/parse/cst/cst.js
function setNodeLocationOnlyOffset(currNodeLocation, newLocationInfo) {
  if (isNaN(currNodeLocation.startOffset) === true) {
    currNodeLocation.startOffset = newLocationInfo.startOffset;
    currNodeLocation.endOffset = newLocationInfo.endOffset;
  } else if (currNodeLocation.endOffset < newLocationInfo.endOffset === true) {
    currNodeLocation.endOffset = newLocationInfo.endOffset;
  }
}
function setNodeLocationFull(currNodeLocation, newLocationInfo) {
  if (isNaN(currNodeLocation.startOffset) === true) {
    currNodeLocation.startOffset = newLocationInfo.startOffset;
    currNodeLocation.startColumn = newLocationInfo.startColumn;
    currNodeLocation.startLine = newLocationInfo.startLine;
    currNodeLocation.endOffset = newLocationInfo.endOffset;
    currNodeLocation.endColumn = newLocationInfo.endColumn;
    currNodeLocation.endLine = newLocationInfo.endLine;
  } else if (currNodeLocation.endOffset < newLocationInfo.endOffset === true) {
    currNodeLocation.endOffset = newLocationInfo.endOffset;
    currNodeLocation.endColumn = newLocationInfo.endColumn;
    currNodeLocation.endLine = newLocationInfo.endLine;
  }
}
function addTerminalToCst(node, token2, tokenTypeName) {
  if (node.children[tokenTypeName] === void 0) {
    node.children[tokenTypeName] = [token2];
  } else {
    node.children[tokenTypeName].push(token2);
  }
}
function addNoneTerminalToCst(node, ruleName, ruleResult) {
  if (node.children[ruleName] === void 0) {
    node.children[ruleName] = [ruleResult];
  } else {
    node.children[ruleName].push(ruleResult);
  }
}

// node_modules/chevrotain/lib/src/lang/lang_extensions.js
var NAME = "name";
function defineNameProp(obj, nameValue) {
  Object.defineProperty(obj, NAME, {
    enumerable: false,
    configurable: true,
    writable: false,
    value: nameValue
  });
}

// node_modules/chevrotain/lib/src/parse/cst/cst_visitor.js
function defaultVisit(ctx, param) {
  const childrenNames = keys_default(ctx);
  const childrenNamesLength = childrenNames.length;
  for (let i = 0; i < childrenNamesLength; i++) {
    const currChildName = childrenNames[i];
    const currChildArray = ctx[currChildName];
    const currChildArrayLength = currChildArray.length;
    for (let j = 0; j < currChildArrayLength; j++) {
      const currChild = currChildArray[j];
      if (currChild.tokenTypeIdx === void 0) {
        this[currChild.name](currChild.children, param);
      }
    }
  }
}
function createBaseSemanticVisitorConstructor(grammarName, ruleNames) {
  const derivedConstructor = function() {
  };
  defineNameProp(derivedConstructor, grammarName + "BaseSemantics");
  const semanticProto = {
    visit: function(cstNode, param) {
      if (isArray_default(cstNode)) {
        cstNode = cstNode[0];
      }
      if (isUndefined_default(cstNode)) {
        return void 0;
      }
      return this[cstNode.name](cstNode.children, param);
    },
    validateVisitor: function() {
      const semanticDefinitionErrors = validateVisitor(this, ruleNames);
      if (!isEmpty_default(semanticDefinitionErrors)) {
        const errorMessages = map_default(semanticDefinitionErrors, (currDefError) => currDefError.msg);
        throw Error(`Errors Detected in CST Visitor <${this.constructor.name}>:
	${errorMessages.join("\n\n").replace(/\n/g, "\n	")}`);
      }
    }
  };
  derivedConstructor.prototype = semanticProto;
  derivedConstructor.prototype.constructor = derivedConstructor;
  derivedConstructor._RULE_NAMES = ruleNames;
  return derivedConstructor;
}
function createBaseVisitorConstructorWithDefaults(grammarName, ruleNames, baseConstructor) {
  const derivedConstructor = function() {
  };
  defineNameProp(derivedConstructor, grammarName + "BaseSemanticsWithDefaults");
  const withDefaultsProto = Object.create(baseConstructor.prototype);
  forEach_default(ruleNames, (ruleName) => {
    withDefaultsProto[ruleName] = defaultVisit;
  });
  derivedConstructor.prototype = withDefaultsProto;
  derivedConstructor.prototype.constructor = derivedConstructor;
  return derivedConstructor;
}
var CstVisitorDefinitionError;
(function(CstVisitorDefinitionError2) {
  CstVisitorDefinitionError2[CstVisitorDefinitionError2["REDUNDANT_METHOD"] = 0] = "REDUNDANT_METHOD";
  CstVisitorDefinitionError2[CstVisitorDefinitionError2["MISSING_METHOD"] = 1] = "MISSING_METHOD";
})(CstVisitorDefinitionError || (CstVisitorDefinitionError = {}));
function validateVisitor(visitorInstance, ruleNames) {
  const missingErrors = validateMissingCstMethods(visitorInstance, ruleNames);
  return missingErrors;
}
function validateMissingCstMethods(visitorInstance, ruleNames) {
  const missingRuleNames = filter_default(ruleNames, (currRuleName) => {
    return isFunction_default(visitorInstance[currRuleName]) === false;
  });
  const errors = map_default(missingRuleNames, (currRuleName) => {
    return {
      msg: `Missing visitor method: <${currRuleName}> on ${visitorInstance.constructor.name} CST Visitor.`,
      type: CstVisitorDefinitionError.MISSING_METHOD,
      methodName: currRuleName
    };
  });
  return compact_default(errors);
}

// node_modules/chevrotain/lib/src/parse/parser/traits/tree_builder.js
var TreeBuilder = class {
  initTreeBuilder(config) {
    this.CST_STACK = [];
    this.outputCst = config.outputCst;
    this.nodeLocationTracking = has_default(config, "nodeLocationTracking") ? config.nodeLocationTracking : DEFAULT_PARSER_CONFIG.nodeLocationTracking;
    if (!this.outputCst) {
      this.cstInvocationStateUpdate = noop_default;
      this.cstFinallyStateUpdate = noop_default;
      this.cstPostTerminal = noop_default;
      this.cstPostNonTerminal = noop_default;
      this.cstPostRule = noop_default;
    } else {
      if (/full/i.test(this.nodeLocationTracking)) {
        if (this.recoveryEnabled) {
          this.setNodeLocationFromToken = setNodeLocationFull;
          this.setNodeLocationFromNode = setNodeLocationFull;
          this.cstPostRule = noop_default;
          this.setInitialNodeLocation = this.setInitialNodeLocationFullRecovery;
        } else {
          this.setNodeLocationFromToken = noop_default;
          this.setNodeLocationFromNode = noop_default;
          this.cstPostRule = this.cstPostRuleFull;
          this.setInitialNodeLocation = this.setInitialNodeLocationFullRegular;
        }
      } else if (/onlyOffset/i.test(this.nodeLocationTracking)) {
        if (this.recoveryEnabled) {
          this.setNodeLocationFromToken = setNodeLocationOnlyOffset;
          this.setNodeLocationFromNode = setNodeLocationOnlyOffset;
          this.cstPostRule = noop_default;
          this.setInitialNodeLocation = this.setInitialNodeLocationOnlyOffsetRecovery;
        } else {
          this.setNodeLocationFromToken = noop_default;
          this.setNodeLocationFromNode = noop_default;
          this.cstPostRule = this.cstPostRuleOnlyOffset;
          this.setInitialNodeLocation = this.setInitialNodeLocationOnlyOffsetRegular;
        }
      } else if (/none/i.test(this.nodeLocationTracking)) {
        this.setNodeLocationFromToken = noop_default;
        this.setNodeLocationFromNode = noop_default;
        this.cstPostRule = noop_default;
        this.setInitialNodeLocation = noop_default;
      } else {
        throw Error(`Invalid <nodeLocationTracking> config option: "${config.nodeLocationTracking}"`);
      }
    }
  }
  setInitialNodeLocationOnlyOffsetRecovery(cstNode) {
    cstNode.location = {
      startOffset: NaN,
      endOffset: NaN
    };
  }
  setInitialNodeLocationOnlyOffsetRegular(cstNode) {
    cstNode.location = {
      // without error recovery the starting Location of a new CstNode is guaranteed
      // To be the next Token's startOffset (for valid inputs).
      // For invalid inputs there won't be any CSTOutput so this potential
      // inaccuracy does not matter
      startOffset: this.LA_FAST(1).startOffset,
      endOffset: NaN
    };
  }
  setInitialNodeLocationFullRecovery(cstNode) {
    cstNode.location = {
      startOffset: NaN,
      startLine: NaN,
      startColumn: NaN,
      endOffset: NaN,
      endLine: NaN,
      endColumn: NaN
    };
  }
  /**
       *  @see setInitialNodeLocationOnlyOffsetRegular for explanation why this work
  
       * @param cstNode
       */
  setInitialNodeLocationFullRegular(cstNode) {
    const nextToken = this.LA_FAST(1);
    cstNode.location = {
      startOffset: nextToken.startOffset,
      startLine: nextToken.startLine,
      startColumn: nextToken.startColumn,
      endOffset: NaN,
      endLine: NaN,
      endColumn: NaN
    };
  }
  cstInvocationStateUpdate(fullRuleName) {
    const cstNode = {
      name: fullRuleName,
      children: /* @__PURE__ */ Object.create(null)
    };
    this.setInitialNodeLocation(cstNode);
    this.CST_STACK.push(cstNode);
  }
  cstFinallyStateUpdate() {
    this.CST_STACK.pop();
  }
  cstPostRuleFull(ruleCstNode) {
    const prevToken = this.LA(0);
    const loc = ruleCstNode.location;
    if (loc.startOffset <= prevToken.startOffset === true) {
      loc.endOffset = prevToken.endOffset;
      loc.endLine = prevToken.endLine;
      loc.endColumn = prevToken.endColumn;
    } else {
      loc.startOffset = NaN;
      loc.startLine = NaN;
      loc.startColumn = NaN;
    }
  }
  cstPostRuleOnlyOffset(ruleCstNode) {
    const prevToken = this.LA(0);
    const loc = ruleCstNode.location;
    if (loc.startOffset <= prevToken.startOffset === true) {
      loc.endOffset = prevToken.endOffset;
    } else {
      loc.startOffset = NaN;
    }
  }
  cstPostTerminal(key, consumedToken) {
    const rootCst = this.CST_STACK[this.CST_STACK.length - 1];
    addTerminalToCst(rootCst, consumedToken, key);
    this.setNodeLocationFromToken(rootCst.location, consumedToken);
  }
  cstPostNonTerminal(ruleCstResult, ruleName) {
    const preCstNode = this.CST_STACK[this.CST_STACK.length - 1];
    addNoneTerminalToCst(preCstNode, ruleName, ruleCstResult);
    this.setNodeLocationFromNode(preCstNode.location, ruleCstResult.location);
  }
  getBaseCstVisitorConstructor() {
    if (isUndefined_default(this.baseCstVisitorConstructor)) {
      const newBaseCstVisitorConstructor = createBaseSemanticVisitorConstructor(this.className, keys_default(this.gastProductionsCache));
      this.baseCstVisitorConstructor = newBaseCstVisitorConstructor;
      return newBaseCstVisitorConstructor;
    }
    return this.baseCstVisitorConstructor;
  }
  getBaseCstVisitorConstructorWithDefaults() {
    if (isUndefined_default(this.baseCstVisitorWithDefaultsConstructor)) {
      const newConstructor = createBaseVisitorConstructorWithDefaults(this.className, keys_default(this.gastProductionsCache), this.getBaseCstVisitorConstructor());
      this.baseCstVisitorWithDefaultsConstructor = newConstructor;
      return newConstructor;
    }
    return this.baseCstVisitorWithDefaultsConstructor;
  }
  getPreviousExplicitRuleShortName() {
    return this.RULE_STACK[this.RULE_STACK_IDX - 1];
  }
  getLastExplicitRuleOccurrenceIndex() {
    return this.RULE_OCCURRENCE_STACK[this.RULE_OCCURRENCE_STACK_IDX];
  }
};

// node_modules/chevrotain/lib/src/parse/parser/traits/lexer_adapter.js
var LexerAdapter = class {
  initLexerAdapter() {
    this.tokVector = [];
    this.tokVectorLength = 0;
    this.currIdx = -1;
  }
  set input(newInput) {
    if (this.selfAnalysisDone !== true) {
      throw Error(`Missing <performSelfAnalysis> invocation at the end of the Parser's constructor.`);
    }
    this.reset();
    this.tokVector = newInput;
    this.tokVectorLength = newInput.length;
  }
  get input() {
    return this.tokVector;
  }
  // skips a token and returns the next token
  SKIP_TOKEN() {
    if (this.currIdx <= this.tokVectorLength - 2) {
      this.consumeToken();
      return this.LA_FAST(1);
    } else {
      return END_OF_FILE;
    }
  }
  // Lexer (accessing Token vector) related methods which can be overridden to implement lazy lexers
  // or lexers dependent on parser context.
  // Performance Optimized version of LA without bound checks
  // note that token beyond the end of the token vector EOF Token will still be returned
  // due to using sentinels at the end of the token vector. (for K=max lookahead)
  LA_FAST(howMuch) {
    const soughtIdx = this.currIdx + howMuch;
    return this.tokVector[soughtIdx];
  }
  LA(howMuch) {
    const soughtIdx = this.currIdx + howMuch;
    if (soughtIdx < 0 || this.tokVectorLength <= soughtIdx) {
      return END_OF_FILE;
    } else {
      return this.tokVector[soughtIdx];
    }
  }
  consumeToken() {
    this.currIdx++;
  }
  exportLexerState() {
    return this.currIdx;
  }
  importLexerState(newState) {
    this.currIdx = newState;
  }
  resetLexerState() {
    this.currIdx = -1;
  }
  moveToTerminatedState() {
    this.currIdx = this.tokVectorLength - 1;
  }
  getLexerPosition() {
    return this.exportLexerState();
  }
};

// node_modules/chevrotain/lib/src/parse/parser/traits/recognizer_api.js
var RecognizerApi = class {
  ACTION(impl) {
    return impl.call(this);
  }
  consume(idx, tokType, options2) {
    return this.consumeInternal(tokType, idx, options2);
  }
  subrule(idx, ruleToCall, options2) {
    return this.subruleInternal(ruleToCall, idx, options2);
  }
  option(idx, actionORMethodDef) {
    return this.optionInternal(actionORMethodDef, idx);
  }
  or(idx, altsOrOpts) {
    return this.orInternal(altsOrOpts, idx);
  }
  many(idx, actionORMethodDef) {
    return this.manyInternal(idx, actionORMethodDef);
  }
  atLeastOne(idx, actionORMethodDef) {
    return this.atLeastOneInternal(idx, actionORMethodDef);
  }
  CONSUME(tokType, options2) {
    return this.consumeInternal(tokType, 0, options2);
  }
  CONSUME1(tokType, options2) {
    return this.consumeInternal(tokType, 1, options2);
  }
  CONSUME2(tokType, options2) {
    return this.consumeInternal(tokType, 2, options2);
  }
  CONSUME3(tokType, options2) {
    return this.consumeInternal(tokType, 3, options2);
  }
  CONSUME4(tokType, options2) {
    return this.consumeInternal(tokType, 4, options2);
  }
  CONSUME5(tokType, options2) {
    return this.consumeInternal(tokType, 5, options2);
  }
  CONSUME6(tokType, options2) {
    return this.consumeInternal(tokType, 6, options2);
  }
  CONSUME7(tokType, options2) {
    return this.consumeInternal(tokType, 7, options2);
  }
  CONSUME8(tokType, options2) {
    return this.consumeInternal(tokType, 8, options2);
  }
  CONSUME9(tokType, options2) {
    return this.consumeInternal(tokType, 9, options2);
  }
  SUBRULE(ruleToCall, options2) {
    return this.subruleInternal(ruleToCall, 0, options2);
  }
  SUBRULE1(ruleToCall, options2) {
    return this.subruleInternal(ruleToCall, 1, options2);
  }
  SUBRULE2(ruleToCall, options2) {
    return this.subruleInternal(ruleToCall, 2, options2);
  }
  SUBRULE3(ruleToCall, options2) {
    return this.subruleInternal(ruleToCall, 3, options2);
  }
  SUBRULE4(ruleToCall, options2) {
    return this.subruleInternal(ruleToCall, 4, options2);
  }
  SUBRULE5(ruleToCall, options2) {
    return this.subruleInternal(ruleToCall, 5, options2);
  }
  SUBRULE6(ruleToCall, options2) {
    return this.subruleInternal(ruleToCall, 6, options2);
  }
  SUBRULE7(ruleToCall, options2) {
    return this.subruleInternal(ruleToCall, 7, options2);
  }
  SUBRULE8(ruleToCall, options2) {
    return this.subruleInternal(ruleToCall, 8, options2);
  }
  SUBRULE9(ruleToCall, options2) {
    return this.subruleInternal(ruleToCall, 9, options2);
  }
  OPTION(actionORMethodDef) {
    return this.optionInternal(actionORMethodDef, 0);
  }
  OPTION1(actionORMethodDef) {
    return this.optionInternal(actionORMethodDef, 1);
  }
  OPTION2(actionORMethodDef) {
    return this.optionInternal(actionORMethodDef, 2);
  }
  OPTION3(actionORMethodDef) {
    return this.optionInternal(actionORMethodDef, 3);
  }
  OPTION4(actionORMethodDef) {
    return this.optionInternal(actionORMethodDef, 4);
  }
  OPTION5(actionORMethodDef) {
    return this.optionInternal(actionORMethodDef, 5);
  }
  OPTION6(actionORMethodDef) {
    return this.optionInternal(actionORMethodDef, 6);
  }
  OPTION7(actionORMethodDef) {
    return this.optionInternal(actionORMethodDef, 7);
  }
  OPTION8(actionORMethodDef) {
    return this.optionInternal(actionORMethodDef, 8);
  }
  OPTION9(actionORMethodDef) {
    return this.optionInternal(actionORMethodDef, 9);
  }
  OR(altsOrOpts) {
    return this.orInternal(altsOrOpts, 0);
  }
  OR1(altsOrOpts) {
    return this.orInternal(altsOrOpts, 1);
  }
  OR2(altsOrOpts) {
    return this.orInternal(altsOrOpts, 2);
  }
  OR3(altsOrOpts) {
    return this.orInternal(altsOrOpts, 3);
  }
  OR4(altsOrOpts) {
    return this.orInternal(altsOrOpts, 4);
  }
  OR5(altsOrOpts) {
    return this.orInternal(altsOrOpts, 5);
  }
  OR6(altsOrOpts) {
    return this.orInternal(altsOrOpts, 6);
  }
  OR7(altsOrOpts) {
    return this.orInternal(altsOrOpts, 7);
  }
  OR8(altsOrOpts) {
    return this.orInternal(altsOrOpts, 8);
  }
  OR9(altsOrOpts) {
    return this.orInternal(altsOrOpts, 9);
  }
  MANY(actionORMethodDef) {
    this.manyInternal(0, actionORMethodDef);
  }
  MANY1(actionORMethodDef) {
    this.manyInternal(1, actionORMethodDef);
  }
  MANY2(actionORMethodDef) {
    this.manyInternal(2, actionORMethodDef);
  }
  MANY3(actionORMethodDef) {
    this.manyInternal(3, actionORMethodDef);
  }
  MANY4(actionORMethodDef) {
    this.manyInternal(4, actionORMethodDef);
  }
  MANY5(actionORMethodDef) {
    this.manyInternal(5, actionORMethodDef);
  }
  MANY6(actionORMethodDef) {
    this.manyInternal(6, actionORMethodDef);
  }
  MANY7(actionORMethodDef) {
    this.manyInternal(7, actionORMethodDef);
  }
  MANY8(actionORMethodDef) {
    this.manyInternal(8, actionORMethodDef);
  }
  MANY9(actionORMethodDef) {
    this.manyInternal(9, actionORMethodDef);
  }
  MANY_SEP(options2) {
    this.manySepFirstInternal(0, options2);
  }
  MANY_SEP1(options2) {
    this.manySepFirstInternal(1, options2);
  }
  MANY_SEP2(options2) {
    this.manySepFirstInternal(2, options2);
  }
  MANY_SEP3(options2) {
    this.manySepFirstInternal(3, options2);
  }
  MANY_SEP4(options2) {
    this.manySepFirstInternal(4, options2);
  }
  MANY_SEP5(options2) {
    this.manySepFirstInternal(5, options2);
  }
  MANY_SEP6(options2) {
    this.manySepFirstInternal(6, options2);
  }
  MANY_SEP7(options2) {
    this.manySepFirstInternal(7, options2);
  }
  MANY_SEP8(options2) {
    this.manySepFirstInternal(8, options2);
  }
  MANY_SEP9(options2) {
    this.manySepFirstInternal(9, options2);
  }
  AT_LEAST_ONE(actionORMethodDef) {
    this.atLeastOneInternal(0, actionORMethodDef);
  }
  AT_LEAST_ONE1(actionORMethodDef) {
    return this.atLeastOneInternal(1, actionORMethodDef);
  }
  AT_LEAST_ONE2(actionORMethodDef) {
    this.atLeastOneInternal(2, actionORMethodDef);
  }
  AT_LEAST_ONE3(actionORMethodDef) {
    this.atLeastOneInternal(3, actionORMethodDef);
  }
  AT_LEAST_ONE4(actionORMethodDef) {
    this.atLeastOneInternal(4, actionORMethodDef);
  }
  AT_LEAST_ONE5(actionORMethodDef) {
    this.atLeastOneInternal(5, actionORMethodDef);
  }
  AT_LEAST_ONE6(actionORMethodDef) {
    this.atLeastOneInternal(6, actionORMethodDef);
  }
  AT_LEAST_ONE7(actionORMethodDef) {
    this.atLeastOneInternal(7, actionORMethodDef);
  }
  AT_LEAST_ONE8(actionORMethodDef) {
    this.atLeastOneInternal(8, actionORMethodDef);
  }
  AT_LEAST_ONE9(actionORMethodDef) {
    this.atLeastOneInternal(9, actionORMethodDef);
  }
  AT_LEAST_ONE_SEP(options2) {
    this.atLeastOneSepFirstInternal(0, options2);
  }
  AT_LEAST_ONE_SEP1(options2) {
    this.atLeastOneSepFirstInternal(1, options2);
  }
  AT_LEAST_ONE_SEP2(options2) {
    this.atLeastOneSepFirstInternal(2, options2);
  }
  AT_LEAST_ONE_SEP3(options2) {
    this.atLeastOneSepFirstInternal(3, options2);
  }
  AT_LEAST_ONE_SEP4(options2) {
    this.atLeastOneSepFirstInternal(4, options2);
  }
  AT_LEAST_ONE_SEP5(options2) {
    this.atLeastOneSepFirstInternal(5, options2);
  }
  AT_LEAST_ONE_SEP6(options2) {
    this.atLeastOneSepFirstInternal(6, options2);
  }
  AT_LEAST_ONE_SEP7(options2) {
    this.atLeastOneSepFirstInternal(7, options2);
  }
  AT_LEAST_ONE_SEP8(options2) {
    this.atLeastOneSepFirstInternal(8, options2);
  }
  AT_LEAST_ONE_SEP9(options2) {
    this.atLeastOneSepFirstInternal(9, options2);
  }
  RULE(name3, implementation, config = DEFAULT_RULE_CONFIG) {
    if (includes_default(this.definedRulesNames, name3)) {
      const errMsg = defaultGrammarValidatorErrorProvider.buildDuplicateRuleNameError({
        topLevelRule: name3,
        grammarName: this.className
      });
      const error = {
        message: errMsg,
        type: ParserDefinitionErrorType.DUPLICATE_RULE_NAME,
        ruleName: name3
      };
      this.definitionErrors.push(error);
    }
    this.definedRulesNames.push(name3);
    const ruleImplementation = this.defineRule(name3, implementation, config);
    this[name3] = ruleImplementation;
    return ruleImplementation;
  }
  OVERRIDE_RULE(name3, impl, config = DEFAULT_RULE_CONFIG) {
    const ruleErrors = validateRuleIsOverridden(name3, this.definedRulesNames, this.className);
    this.definitionErrors = this.definitionErrors.concat(ruleErrors);
    const ruleImplementation = this.defineRule(name3, impl, config);
    this[name3] = ruleImplementation;
    return ruleImplementation;
  }
  BACKTRACK(grammarRule, args) {
    var _a;
    const ruleToCall = (_a = grammarRule.coreRule) !== null && _a !== void 0 ? _a : grammarRule;
    return function() {
      this.isBackTrackingStack.push(1);
      const orgState = this.saveRecogState();
      try {
        ruleToCall.apply(this, args);
        return true;
      } catch (e) {
        if (isRecognitionException(e)) {
          return false;
        } else {
          throw e;
        }
      } finally {
        this.reloadRecogState(orgState);
        this.isBackTrackingStack.pop();
      }
    };
  }
  // GAST export APIs
  getGAstProductions() {
    return this.gastProductionsCache;
  }
  getSerializedGastProductions() {
    return serializeGrammar(values_default(this.gastProductionsCache));
  }
};

// node_modules/chevrotain/lib/src/parse/parser/traits/recognizer_engine.js
var RecognizerEngine = class {
  initRecognizerEngine(tokenVocabulary, config) {
    this.className = this.constructor.name;
    this.shortRuleNameToFull = {};
    this.fullRuleNameToShort = {};
    this.ruleShortNameIdx = 256;
    this.tokenMatcher = tokenStructuredMatcherNoCategories;
    this.subruleIdx = 0;
    this.currRuleShortName = 0;
    this.definedRulesNames = [];
    this.tokensMap = {};
    this.isBackTrackingStack = [];
    this.RULE_STACK = [];
    this.RULE_STACK_IDX = -1;
    this.RULE_OCCURRENCE_STACK = [];
    this.RULE_OCCURRENCE_STACK_IDX = -1;
    this.gastProductionsCache = {};
    if (has_default(config, "serializedGrammar")) {
      throw Error("The Parser's configuration can no longer contain a <serializedGrammar> property.\n	See: https://chevrotain.io/docs/changes/BREAKING_CHANGES.html#_6-0-0\n	For Further details.");
    }
    if (isArray_default(tokenVocabulary)) {
      if (isEmpty_default(tokenVocabulary)) {
        throw Error("A Token Vocabulary cannot be empty.\n	Note that the first argument for the parser constructor\n	is no longer a Token vector (since v4.0).");
      }
      if (typeof tokenVocabulary[0].startOffset === "number") {
        throw Error("The Parser constructor no longer accepts a token vector as the first argument.\n	See: https://chevrotain.io/docs/changes/BREAKING_CHANGES.html#_4-0-0\n	For Further details.");
      }
    }
    if (isArray_default(tokenVocabulary)) {
      this.tokensMap = reduce_default(tokenVocabulary, (acc, tokType) => {
        acc[tokType.name] = tokType;
        return acc;
      }, {});
    } else if (has_default(tokenVocabulary, "modes") && every_default(flatten_default(values_default(tokenVocabulary.modes)), isTokenType)) {
      const allTokenTypes2 = flatten_default(values_default(tokenVocabulary.modes));
      const uniqueTokens = uniq_default(allTokenTypes2);
      this.tokensMap = reduce_default(uniqueTokens, (acc, tokType) => {
        acc[tokType.name] = tokType;
        return acc;
      }, {});
    } else if (isObject_default(tokenVocabulary)) {
      this.tokensMap = clone_default(tokenVocabulary);
    } else {
      throw new Error("<tokensDictionary> argument must be An Array of Token constructors, A dictionary of Token constructors or an IMultiModeLexerDefinition");
    }
    this.tokensMap["EOF"] = EOF;
    const allTokenTypes = has_default(tokenVocabulary, "modes") ? flatten_default(values_default(tokenVocabulary.modes)) : values_default(tokenVocabulary);
    const noTokenCategoriesUsed = every_default(allTokenTypes, (tokenConstructor) => isEmpty_default(tokenConstructor.categoryMatches));
    this.tokenMatcher = noTokenCategoriesUsed ? tokenStructuredMatcherNoCategories : tokenStructuredMatcher;
    augmentTokenTypes(values_default(this.tokensMap));
  }
  defineRule(ruleName, impl, config) {
    if (this.selfAnalysisDone) {
      throw Error(`Grammar rule <${ruleName}> may not be defined after the 'performSelfAnalysis' method has been called'
Make sure that all grammar rule definitions are done before 'performSelfAnalysis' is called.`);
    }
    const resyncEnabled = has_default(config, "resyncEnabled") ? config.resyncEnabled : DEFAULT_RULE_CONFIG.resyncEnabled;
    const recoveryValueFunc = has_default(config, "recoveryValueFunc") ? config.recoveryValueFunc : DEFAULT_RULE_CONFIG.recoveryValueFunc;
    const shortName = this.ruleShortNameIdx << BITS_FOR_METHOD_TYPE + BITS_FOR_OCCURRENCE_IDX;
    this.ruleShortNameIdx++;
    this.shortRuleNameToFull[shortName] = ruleName;
    this.fullRuleNameToShort[ruleName] = shortName;
    let coreRuleFunction;
    if (this.outputCst === true) {
      coreRuleFunction = function invokeRuleWithTry(...args) {
        try {
          this.ruleInvocationStateUpdate(shortName, ruleName, this.subruleIdx);
          impl.apply(this, args);
          const cst = this.CST_STACK[this.CST_STACK.length - 1];
          this.cstPostRule(cst);
          return cst;
        } catch (e) {
          return this.invokeRuleCatch(e, resyncEnabled, recoveryValueFunc);
        } finally {
          this.ruleFinallyStateUpdate();
        }
      };
    } else {
      coreRuleFunction = function invokeRuleWithTryCst(...args) {
        try {
          this.ruleInvocationStateUpdate(shortName, ruleName, this.subruleIdx);
          return impl.apply(this, args);
        } catch (e) {
          return this.invokeRuleCatch(e, resyncEnabled, recoveryValueFunc);
        } finally {
          this.ruleFinallyStateUpdate();
        }
      };
    }
    const rootRuleFunction = function rootRule(...args) {
      this.onBeforeParse(ruleName);
      try {
        return coreRuleFunction.apply(this, args);
      } finally {
        this.onAfterParse(ruleName);
      }
    };
    const wrappedGrammarRule = Object.assign(rootRuleFunction, { ruleName, originalGrammarAction: impl, coreRule: coreRuleFunction });
    return wrappedGrammarRule;
  }
  invokeRuleCatch(e, resyncEnabledConfig, recoveryValueFunc) {
    const isFirstInvokedRule = this.RULE_STACK_IDX === 0;
    const reSyncEnabled = resyncEnabledConfig && !this.isBackTracking() && this.recoveryEnabled;
    if (isRecognitionException(e)) {
      const recogError = e;
      if (reSyncEnabled) {
        const reSyncTokType = this.findReSyncTokenType();
        if (this.isInCurrentRuleReSyncSet(reSyncTokType)) {
          recogError.resyncedTokens = this.reSyncTo(reSyncTokType);
          if (this.outputCst) {
            const partialCstResult = this.CST_STACK[this.CST_STACK.length - 1];
            partialCstResult.recoveredNode = true;
            return partialCstResult;
          } else {
            return recoveryValueFunc(e);
          }
        } else {
          if (this.outputCst) {
            const partialCstResult = this.CST_STACK[this.CST_STACK.length - 1];
            partialCstResult.recoveredNode = true;
            recogError.partialCstResult = partialCstResult;
          }
          throw recogError;
        }
      } else if (isFirstInvokedRule) {
        this.moveToTerminatedState();
        return recoveryValueFunc(e);
      } else {
        throw recogError;
      }
    } else {
      throw e;
    }
  }
  // Implementation of parsing DSL
  optionInternal(actionORMethodDef, occurrence) {
    const key = this.getKeyForAutomaticLookahead(OPTION_IDX, occurrence);
    return this.optionInternalLogic(actionORMethodDef, occurrence, key);
  }
  optionInternalLogic(actionORMethodDef, occurrence, key) {
    let lookAheadFunc = this.getLaFuncFromCache(key);
    let action;
    if (typeof actionORMethodDef !== "function") {
      action = actionORMethodDef.DEF;
      const predicate = actionORMethodDef.GATE;
      if (predicate !== void 0) {
        const orgLookaheadFunction = lookAheadFunc;
        lookAheadFunc = () => {
          return predicate.call(this) && orgLookaheadFunction.call(this);
        };
      }
    } else {
      action = actionORMethodDef;
    }
    if (lookAheadFunc.call(this) === true) {
      return action.call(this);
    }
    return void 0;
  }
  atLeastOneInternal(prodOccurrence, actionORMethodDef) {
    const laKey = this.getKeyForAutomaticLookahead(AT_LEAST_ONE_IDX, prodOccurrence);
    return this.atLeastOneInternalLogic(prodOccurrence, actionORMethodDef, laKey);
  }
  atLeastOneInternalLogic(prodOccurrence, actionORMethodDef, key) {
    let lookAheadFunc = this.getLaFuncFromCache(key);
    let action;
    if (typeof actionORMethodDef !== "function") {
      action = actionORMethodDef.DEF;
      const predicate = actionORMethodDef.GATE;
      if (predicate !== void 0) {
        const orgLookaheadFunction = lookAheadFunc;
        lookAheadFunc = () => {
          return predicate.call(this) && orgLookaheadFunction.call(this);
        };
      }
    } else {
      action = actionORMethodDef;
    }
    if (lookAheadFunc.call(this) === true) {
      let notStuck = this.doSingleRepetition(action);
      while (lookAheadFunc.call(this) === true && notStuck === true) {
        notStuck = this.doSingleRepetition(action);
      }
    } else {
      throw this.raiseEarlyExitException(prodOccurrence, PROD_TYPE.REPETITION_MANDATORY, actionORMethodDef.ERR_MSG);
    }
    this.attemptInRepetitionRecovery(this.atLeastOneInternal, [prodOccurrence, actionORMethodDef], lookAheadFunc, AT_LEAST_ONE_IDX, prodOccurrence, NextTerminalAfterAtLeastOneWalker);
  }
  atLeastOneSepFirstInternal(prodOccurrence, options2) {
    const laKey = this.getKeyForAutomaticLookahead(AT_LEAST_ONE_SEP_IDX, prodOccurrence);
    this.atLeastOneSepFirstInternalLogic(prodOccurrence, options2, laKey);
  }
  atLeastOneSepFirstInternalLogic(prodOccurrence, options2, key) {
    const action = options2.DEF;
    const separator = options2.SEP;
    const firstIterationLookaheadFunc = this.getLaFuncFromCache(key);
    if (firstIterationLookaheadFunc.call(this) === true) {
      action.call(this);
      const separatorLookAheadFunc = () => {
        return this.tokenMatcher(this.LA_FAST(1), separator);
      };
      while (this.tokenMatcher(this.LA_FAST(1), separator) === true) {
        this.CONSUME(separator);
        action.call(this);
      }
      this.attemptInRepetitionRecovery(this.repetitionSepSecondInternal, [
        prodOccurrence,
        separator,
        separatorLookAheadFunc,
        action,
        NextTerminalAfterAtLeastOneSepWalker
      ], separatorLookAheadFunc, AT_LEAST_ONE_SEP_IDX, prodOccurrence, NextTerminalAfterAtLeastOneSepWalker);
    } else {
      throw this.raiseEarlyExitException(prodOccurrence, PROD_TYPE.REPETITION_MANDATORY_WITH_SEPARATOR, options2.ERR_MSG);
    }
  }
  manyInternal(prodOccurrence, actionORMethodDef) {
    const laKey = this.getKeyForAutomaticLookahead(MANY_IDX, prodOccurrence);
    return this.manyInternalLogic(prodOccurrence, actionORMethodDef, laKey);
  }
  manyInternalLogic(prodOccurrence, actionORMethodDef, key) {
    let lookaheadFunction = this.getLaFuncFromCache(key);
    let action;
    if (typeof actionORMethodDef !== "function") {
      action = actionORMethodDef.DEF;
      const predicate = actionORMethodDef.GATE;
      if (predicate !== void 0) {
        const orgLookaheadFunction = lookaheadFunction;
        lookaheadFunction = () => {
          return predicate.call(this) && orgLookaheadFunction.call(this);
        };
      }
    } else {
      action = actionORMethodDef;
    }
    let notStuck = true;
    while (lookaheadFunction.call(this) === true && notStuck === true) {
      notStuck = this.doSingleRepetition(action);
    }
    this.attemptInRepetitionRecovery(
      this.manyInternal,
      [prodOccurrence, actionORMethodDef],
      lookaheadFunction,
      MANY_IDX,
      prodOccurrence,
      NextTerminalAfterManyWalker,
      // The notStuck parameter is only relevant when "attemptInRepetitionRecovery"
      // is invoked from manyInternal, in the MANY_SEP case and AT_LEAST_ONE[_SEP]
      // An infinite loop cannot occur as:
      // - Either the lookahead is guaranteed to consume something (Single Token Separator)
      // - AT_LEAST_ONE by definition is guaranteed to consume something (or error out).
      notStuck
    );
  }
  manySepFirstInternal(prodOccurrence, options2) {
    const laKey = this.getKeyForAutomaticLookahead(MANY_SEP_IDX, prodOccurrence);
    this.manySepFirstInternalLogic(prodOccurrence, options2, laKey);
  }
  manySepFirstInternalLogic(prodOccurrence, options2, key) {
    const action = options2.DEF;
    const separator = options2.SEP;
    const firstIterationLaFunc = this.getLaFuncFromCache(key);
    if (firstIterationLaFunc.call(this) === true) {
      action.call(this);
      const separatorLookAheadFunc = () => {
        return this.tokenMatcher(this.LA_FAST(1), separator);
      };
      while (this.tokenMatcher(this.LA_FAST(1), separator) === true) {
        this.CONSUME(separator);
        action.call(this);
      }
      this.attemptInRepetitionRecovery(this.repetitionSepSecondInternal, [
        prodOccurrence,
        separator,
        separatorLookAheadFunc,
        action,
        NextTerminalAfterManySepWalker
      ], separatorLookAheadFunc, MANY_SEP_IDX, prodOccurrence, NextTerminalAfterManySepWalker);
    }
  }
  repetitionSepSecondInternal(prodOccurrence, separator, separatorLookAheadFunc, action, nextTerminalAfterWalker) {
    while (separatorLookAheadFunc()) {
      this.CONSUME(separator);
      action.call(this);
    }
    this.attemptInRepetitionRecovery(this.repetitionSepSecondInternal, [
      prodOccurrence,
      separator,
      separatorLookAheadFunc,
      action,
      nextTerminalAfterWalker
    ], separatorLookAheadFunc, AT_LEAST_ONE_SEP_IDX, prodOccurrence, nextTerminalAfterWalker);
  }
  doSingleRepetition(action) {
    const beforeIteration = this.getLexerPosition();
    action.call(this);
    const afterIteration = this.getLexerPosition();
    return afterIteration > beforeIteration;
  }
  orInternal(altsOrOpts, occurrence) {
    const laKey = this.getKeyForAutomaticLookahead(OR_IDX, occurrence);
    const alts = isArray_default(altsOrOpts) ? altsOrOpts : altsOrOpts.DEF;
    const laFunc = this.getLaFuncFromCache(laKey);
    const altIdxToTake = laFunc.call(this, alts);
    if (altIdxToTake !== void 0) {
      const chosenAlternative = alts[altIdxToTake];
      return chosenAlternative.ALT.call(this);
    }
    this.raiseNoAltException(occurrence, altsOrOpts.ERR_MSG);
  }
  ruleFinallyStateUpdate() {
    this.RULE_STACK_IDX--;
    this.RULE_OCCURRENCE_STACK_IDX--;
    if (this.RULE_STACK_IDX >= 0) {
      this.currRuleShortName = this.RULE_STACK[this.RULE_STACK_IDX];
    }
    this.cstFinallyStateUpdate();
  }
  subruleInternal(ruleToCall, idx, options2) {
    let ruleResult;
    try {
      const args = options2 !== void 0 ? options2.ARGS : void 0;
      this.subruleIdx = idx;
      ruleResult = ruleToCall.coreRule.apply(this, args);
      this.cstPostNonTerminal(ruleResult, options2 !== void 0 && options2.LABEL !== void 0 ? options2.LABEL : ruleToCall.ruleName);
      return ruleResult;
    } catch (e) {
      throw this.subruleInternalError(e, options2, ruleToCall.ruleName);
    }
  }
  subruleInternalError(e, options2, ruleName) {
    if (isRecognitionException(e) && e.partialCstResult !== void 0) {
      this.cstPostNonTerminal(e.partialCstResult, options2 !== void 0 && options2.LABEL !== void 0 ? options2.LABEL : ruleName);
      delete e.partialCstResult;
    }
    throw e;
  }
  consumeInternal(tokType, idx, options2) {
    let consumedToken;
    try {
      const nextToken = this.LA_FAST(1);
      if (this.tokenMatcher(nextToken, tokType) === true) {
        this.consumeToken();
        consumedToken = nextToken;
      } else {
        this.consumeInternalError(tokType, nextToken, options2);
      }
    } catch (eFromConsumption) {
      consumedToken = this.consumeInternalRecovery(tokType, idx, eFromConsumption);
    }
    this.cstPostTerminal(options2 !== void 0 && options2.LABEL !== void 0 ? options2.LABEL : tokType.name, consumedToken);
    return consumedToken;
  }
  consumeInternalError(tokType, nextToken, options2) {
    let msg;
    const previousToken = this.LA(0);
    if (options2 !== void 0 && options2.ERR_MSG) {
      msg = options2.ERR_MSG;
    } else {
      msg = this.errorMessageProvider.buildMismatchTokenMessage({
        expected: tokType,
        actual: nextToken,
        previous: previousToken,
        ruleName: this.getCurrRuleFullName()
      });
    }
    throw this.SAVE_ERROR(new MismatchedTokenException(msg, nextToken, previousToken));
  }
  consumeInternalRecovery(tokType, idx, eFromConsumption) {
    if (this.recoveryEnabled && // TODO: more robust checking of the exception type. Perhaps Typescript extending expressions?
    eFromConsumption.name === "MismatchedTokenException" && !this.isBackTracking()) {
      const follows = this.getFollowsForInRuleRecovery(tokType, idx);
      try {
        return this.tryInRuleRecovery(tokType, follows);
      } catch (eFromInRuleRecovery) {
        if (eFromInRuleRecovery.name === IN_RULE_RECOVERY_EXCEPTION) {
          throw eFromConsumption;
        } else {
          throw eFromInRuleRecovery;
        }
      }
    } else {
      throw eFromConsumption;
    }
  }
  saveRecogState() {
    const savedErrors = this.errors;
    const savedRuleStack = this.RULE_STACK.slice(0, this.RULE_STACK_IDX + 1);
    return {
      errors: savedErrors,
      lexerState: this.exportLexerState(),
      RULE_STACK: savedRuleStack,
      CST_STACK: this.CST_STACK
    };
  }
  reloadRecogState(newState) {
    this.errors = newState.errors;
    this.importLexerState(newState.lexerState);
    const saved = newState.RULE_STACK;
    for (let i = 0; i < saved.length; i++) {
      this.RULE_STACK[i] = saved[i];
    }
    this.RULE_STACK_IDX = saved.length - 1;
    if (this.RULE_STACK_IDX >= 0) {
      this.currRuleShortName = this.RULE_STACK[this.RULE_STACK_IDX];
    }
  }
  ruleInvocationStateUpdate(shortName, fullName, idxInCallingRule) {
    this.RULE_OCCURRENCE_STACK[++this.RULE_OCCURRENCE_STACK_IDX] = idxInCallingRule;
    this.RULE_STACK[++this.RULE_STACK_IDX] = shortName;
    this.currRuleShortName = shortName;
    this.cstInvocationStateUpdate(fullName);
  }
  isBackTracking() {
    return this.isBackTrackingStack.length !== 0;
  }
  getCurrRuleFullName() {
    const shortName = this.currRuleShortName;
    return this.shortRuleNameToFull[shortName];
  }
  shortRuleNameToFullName(shortName) {
    return this.shortRuleNameToFull[shortName];
  }
  isAtEndOfInput() {
    return this.tokenMatcher(this.LA(1), EOF);
  }
  reset() {
    this.resetLexerState();
    this.subruleIdx = 0;
    this.currRuleShortName = 0;
    this.isBackTrackingStack = [];
    this.errors = [];
    this.RULE_STACK_IDX = -1;
    this.RULE_OCCURRENCE_STACK_IDX = -1;
    this.CST_STACK = [];
  }
  /**
   * Hook called before the root-level parsing rule is invoked.
   * This is only called when a rule is invoked directly by the consumer
   * (e.g., `parser.json()`), not when invoked as a sub-rule via SUBRULE.
   *
   * Override this method to perform actions before parsing begins.
   * The default implementation is a no-op.
   *
   * @param ruleName - The name of the root rule being invoked.
   */
  onBeforeParse(ruleName) {
    for (let i = 0; i < this.maxLookahead + 1; i++) {
      this.tokVector.push(END_OF_FILE);
    }
  }
  /**
   * Hook called after the root-level parsing rule has completed (or thrown).
   * This is only called when a rule is invoked directly by the consumer
   * (e.g., `parser.json()`), not when invoked as a sub-rule via SUBRULE.
   *
   * This hook is called in a `finally` block, so it executes regardless of
   * whether parsing succeeded or threw an error.
   *
   * Override this method to perform actions after parsing completes.
   * The default implementation is a no-op.
   *
   * @param ruleName - The name of the root rule that was invoked.
   */
  onAfterParse(ruleName) {
    if (this.isAtEndOfInput() === false) {
      const firstRedundantTok = this.LA(1);
      const errMsg = this.errorMessageProvider.buildNotAllInputParsedMessage({
        firstRedundant: firstRedundantTok,
        ruleName: this.getCurrRuleFullName()
      });
      this.SAVE_ERROR(new NotAllInputParsedException(errMsg, firstRedundantTok));
    }
    while (this.tokVector.at(-1) === END_OF_FILE) {
      this.tokVector.pop();
    }
  }
};

// node_modules/chevrotain/lib/src/parse/parser/traits/error_handler.js
var ErrorHandler = class {
  initErrorHandler(config) {
    this._errors = [];
    this.errorMessageProvider = has_default(config, "errorMessageProvider") ? config.errorMessageProvider : DEFAULT_PARSER_CONFIG.errorMessageProvider;
  }
  SAVE_ERROR(error) {
    if (isRecognitionException(error)) {
      error.context = {
        ruleStack: this.getHumanReadableRuleStack(),
        ruleOccurrenceStack: this.RULE_OCCURRENCE_STACK.slice(0, this.RULE_OCCURRENCE_STACK_IDX + 1)
      };
      this._errors.push(error);
      return error;
    } else {
      throw Error("Trying to save an Error which is not a RecognitionException");
    }
  }
  get errors() {
    return clone_default(this._errors);
  }
  set errors(newErrors) {
    this._errors = newErrors;
  }
  // TODO: consider caching the error message computed information
  raiseEarlyExitException(occurrence, prodType, userDefinedErrMsg) {
    const ruleName = this.getCurrRuleFullName();
    const ruleGrammar = this.getGAstProductions()[ruleName];
    const lookAheadPathsPerAlternative = getLookaheadPathsForOptionalProd(occurrence, ruleGrammar, prodType, this.maxLookahead);
    const insideProdPaths = lookAheadPathsPerAlternative[0];
    const actualTokens = [];
    for (let i = 1; i <= this.maxLookahead; i++) {
      actualTokens.push(this.LA(i));
    }
    const msg = this.errorMessageProvider.buildEarlyExitMessage({
      expectedIterationPaths: insideProdPaths,
      actual: actualTokens,
      previous: this.LA(0),
      customUserDescription: userDefinedErrMsg,
      ruleName
    });
    throw this.SAVE_ERROR(new EarlyExitException(msg, this.LA(1), this.LA(0)));
  }
  // TODO: consider caching the error message computed information
  raiseNoAltException(occurrence, errMsgTypes) {
    const ruleName = this.getCurrRuleFullName();
    const ruleGrammar = this.getGAstProductions()[ruleName];
    const lookAheadPathsPerAlternative = getLookaheadPathsForOr(occurrence, ruleGrammar, this.maxLookahead);
    const actualTokens = [];
    for (let i = 1; i <= this.maxLookahead; i++) {
      actualTokens.push(this.LA(i));
    }
    const previousToken = this.LA(0);
    const errMsg = this.errorMessageProvider.buildNoViableAltMessage({
      expectedPathsPerAlt: lookAheadPathsPerAlternative,
      actual: actualTokens,
      previous: previousToken,
      customUserDescription: errMsgTypes,
      ruleName: this.getCurrRuleFullName()
    });
    throw this.SAVE_ERROR(new NoViableAltException(errMsg, this.LA(1), previousToken));
  }
};

// node_modules/chevrotain/lib/src/parse/parser/traits/context_assist.js
var ContentAssist = class {
  initContentAssist() {
  }
  computeContentAssist(startRuleName, precedingInput) {
    const startRuleGast = this.gastProductionsCache[startRuleName];
    if (isUndefined_default(startRuleGast)) {
      throw Error(`Rule ->${startRuleName}<- does not exist in this grammar.`);
    }
    return nextPossibleTokensAfter([startRuleGast], precedingInput, this.tokenMatcher, this.maxLookahead);
  }
  // TODO: should this be a member method or a utility? it does not have any state or usage of 'this'...
  // TODO: should this be more explicitly part of the public API?
  getNextPossibleTokenTypes(grammarPath) {
    const topRuleName = head_default(grammarPath.ruleStack);
    const gastProductions = this.getGAstProductions();
    const topProduction = gastProductions[topRuleName];
    const nextPossibleTokenTypes = new NextAfterTokenWalker(topProduction, grammarPath).startWalking();
    return nextPossibleTokenTypes;
  }
};

// node_modules/chevrotain/lib/src/parse/parser/traits/gast_recorder.js
var RECORDING_NULL_OBJECT = {
  description: "This Object indicates the Parser is during Recording Phase"
};
Object.freeze(RECORDING_NULL_OBJECT);
var HANDLE_SEPARATOR = true;
var MAX_METHOD_IDX = Math.pow(2, BITS_FOR_OCCURRENCE_IDX) - 1;
var RFT = createToken({ name: "RECORDING_PHASE_TOKEN", pattern: Lexer.NA });
augmentTokenTypes([RFT]);
var RECORDING_PHASE_TOKEN = createTokenInstance(
  RFT,
  "This IToken indicates the Parser is in Recording Phase\n	See: https://chevrotain.io/docs/guide/internals.html#grammar-recording for details",
  // Using "-1" instead of NaN (as in EOF) because an actual number is less likely to
  // cause errors if the output of LA or CONSUME would be (incorrectly) used during the recording phase.
  -1,
  -1,
  -1,
  -1,
  -1,
  -1
);
Object.freeze(RECORDING_PHASE_TOKEN);
var RECORDING_PHASE_CSTNODE = {
  name: "This CSTNode indicates the Parser is in Recording Phase\n	See: https://chevrotain.io/docs/guide/internals.html#grammar-recording for details",
  children: {}
};
var GastRecorder = class {
  initGastRecorder(config) {
    this.recordingProdStack = [];
    this.RECORDING_PHASE = false;
  }
  enableRecording() {
    this.RECORDING_PHASE = true;
    this.TRACE_INIT("Enable Recording", () => {
      for (let i = 0; i < 10; i++) {
        const idx = i > 0 ? i : "";
        this[`CONSUME${idx}`] = function(arg1, arg2) {
          return this.consumeInternalRecord(arg1, i, arg2);
        };
        this[`SUBRULE${idx}`] = function(arg1, arg2) {
          return this.subruleInternalRecord(arg1, i, arg2);
        };
        this[`OPTION${idx}`] = function(arg1) {
          return this.optionInternalRecord(arg1, i);
        };
        this[`OR${idx}`] = function(arg1) {
          return this.orInternalRecord(arg1, i);
        };
        this[`MANY${idx}`] = function(arg1) {
          this.manyInternalRecord(i, arg1);
        };
        this[`MANY_SEP${idx}`] = function(arg1) {
          this.manySepFirstInternalRecord(i, arg1);
        };
        this[`AT_LEAST_ONE${idx}`] = function(arg1) {
          this.atLeastOneInternalRecord(i, arg1);
        };
        this[`AT_LEAST_ONE_SEP${idx}`] = function(arg1) {
          this.atLeastOneSepFirstInternalRecord(i, arg1);
        };
      }
      this[`consume`] = function(idx, arg1, arg2) {
        return this.consumeInternalRecord(arg1, idx, arg2);
      };
      this[`subrule`] = function(idx, arg1, arg2) {
        return this.subruleInternalRecord(arg1, idx, arg2);
      };
      this[`option`] = function(idx, arg1) {
        return this.optionInternalRecord(arg1, idx);
      };
      this[`or`] = function(idx, arg1) {
        return this.orInternalRecord(arg1, idx);
      };
      this[`many`] = function(idx, arg1) {
        this.manyInternalRecord(idx, arg1);
      };
      this[`atLeastOne`] = function(idx, arg1) {
        this.atLeastOneInternalRecord(idx, arg1);
      };
      this.ACTION = this.ACTION_RECORD;
      this.BACKTRACK = this.BACKTRACK_RECORD;
      this.LA = this.LA_RECORD;
    });
  }
  disableRecording() {
    this.RECORDING_PHASE = false;
    this.TRACE_INIT("Deleting Recording methods", () => {
      const that = this;
      for (let i = 0; i < 10; i++) {
        const idx = i > 0 ? i : "";
        delete that[`CONSUME${idx}`];
        delete that[`SUBRULE${idx}`];
        delete that[`OPTION${idx}`];
        delete that[`OR${idx}`];
        delete that[`MANY${idx}`];
        delete that[`MANY_SEP${idx}`];
        delete that[`AT_LEAST_ONE${idx}`];
        delete that[`AT_LEAST_ONE_SEP${idx}`];
      }
      delete that[`consume`];
      delete that[`subrule`];
      delete that[`option`];
      delete that[`or`];
      delete that[`many`];
      delete that[`atLeastOne`];
      delete that.ACTION;
      delete that.BACKTRACK;
      delete that.LA;
    });
  }
  //   Parser methods are called inside an ACTION?
  //   Maybe try/catch/finally on ACTIONS while disabling the recorders state changes?
  // @ts-expect-error -- noop place holder
  ACTION_RECORD(impl) {
  }
  // Executing backtracking logic will break our recording logic assumptions
  BACKTRACK_RECORD(grammarRule, args) {
    return () => true;
  }
  // LA is part of the official API and may be used for custom lookahead logic
  // by end users who may forget to wrap it in ACTION or inside a GATE
  LA_RECORD(howMuch) {
    return END_OF_FILE;
  }
  topLevelRuleRecord(name3, def) {
    try {
      const newTopLevelRule = new Rule({ definition: [], name: name3 });
      newTopLevelRule.name = name3;
      this.recordingProdStack.push(newTopLevelRule);
      def.call(this);
      this.recordingProdStack.pop();
      return newTopLevelRule;
    } catch (originalError) {
      if (originalError.KNOWN_RECORDER_ERROR !== true) {
        try {
          originalError.message = originalError.message + '\n	 This error was thrown during the "grammar recording phase" For more info see:\n	https://chevrotain.io/docs/guide/internals.html#grammar-recording';
        } catch (mutabilityError) {
          throw originalError;
        }
      }
      throw originalError;
    }
  }
  // Implementation of parsing DSL
  optionInternalRecord(actionORMethodDef, occurrence) {
    return recordProd.call(this, Option, actionORMethodDef, occurrence);
  }
  atLeastOneInternalRecord(occurrence, actionORMethodDef) {
    recordProd.call(this, RepetitionMandatory, actionORMethodDef, occurrence);
  }
  atLeastOneSepFirstInternalRecord(occurrence, options2) {
    recordProd.call(this, RepetitionMandatoryWithSeparator, options2, occurrence, HANDLE_SEPARATOR);
  }
  manyInternalRecord(occurrence, actionORMethodDef) {
    recordProd.call(this, Repetition, actionORMethodDef, occurrence);
  }
  manySepFirstInternalRecord(occurrence, options2) {
    recordProd.call(this, RepetitionWithSeparator, options2, occurrence, HANDLE_SEPARATOR);
  }
  orInternalRecord(altsOrOpts, occurrence) {
    return recordOrProd.call(this, altsOrOpts, occurrence);
  }
  subruleInternalRecord(ruleToCall, occurrence, options2) {
    assertMethodIdxIsValid(occurrence);
    if (!ruleToCall || has_default(ruleToCall, "ruleName") === false) {
      const error = new Error(`<SUBRULE${getIdxSuffix(occurrence)}> argument is invalid expecting a Parser method reference but got: <${JSON.stringify(ruleToCall)}>
 inside top level rule: <${this.recordingProdStack[0].name}>`);
      error.KNOWN_RECORDER_ERROR = true;
      throw error;
    }
    const prevProd = last_default(this.recordingProdStack);
    const ruleName = ruleToCall.ruleName;
    const newNoneTerminal = new NonTerminal({
      idx: occurrence,
      nonTerminalName: ruleName,
      label: options2 === null || options2 === void 0 ? void 0 : options2.LABEL,
      // The resolving of the `referencedRule` property will be done once all the Rule's GASTs have been created
      referencedRule: void 0
    });
    prevProd.definition.push(newNoneTerminal);
    return this.outputCst ? RECORDING_PHASE_CSTNODE : RECORDING_NULL_OBJECT;
  }
  consumeInternalRecord(tokType, occurrence, options2) {
    assertMethodIdxIsValid(occurrence);
    if (!hasShortKeyProperty(tokType)) {
      const error = new Error(`<CONSUME${getIdxSuffix(occurrence)}> argument is invalid expecting a TokenType reference but got: <${JSON.stringify(tokType)}>
 inside top level rule: <${this.recordingProdStack[0].name}>`);
      error.KNOWN_RECORDER_ERROR = true;
      throw error;
    }
    const prevProd = last_default(this.recordingProdStack);
    const newNoneTerminal = new Terminal({
      idx: occurrence,
      terminalType: tokType,
      label: options2 === null || options2 === void 0 ? void 0 : options2.LABEL
    });
    prevProd.definition.push(newNoneTerminal);
    return RECORDING_PHASE_TOKEN;
  }
};
function recordProd(prodConstructor, mainProdArg, occurrence, handleSep = false) {
  assertMethodIdxIsValid(occurrence);
  const prevProd = last_default(this.recordingProdStack);
  const grammarAction = isFunction_default(mainProdArg) ? mainProdArg : mainProdArg.DEF;
  const newProd = new prodConstructor({ definition: [], idx: occurrence });
  if (handleSep) {
    newProd.separator = mainProdArg.SEP;
  }
  if (has_default(mainProdArg, "MAX_LOOKAHEAD")) {
    newProd.maxLookahead = mainProdArg.MAX_LOOKAHEAD;
  }
  this.recordingProdStack.push(newProd);
  grammarAction.call(this);
  prevProd.definition.push(newProd);
  this.recordingProdStack.pop();
  return RECORDING_NULL_OBJECT;
}
function recordOrProd(mainProdArg, occurrence) {
  assertMethodIdxIsValid(occurrence);
  const prevProd = last_default(this.recordingProdStack);
  const hasOptions = isArray_default(mainProdArg) === false;
  const alts = hasOptions === false ? mainProdArg : mainProdArg.DEF;
  const newOrProd = new Alternation({
    definition: [],
    idx: occurrence,
    ignoreAmbiguities: hasOptions && mainProdArg.IGNORE_AMBIGUITIES === true
  });
  if (has_default(mainProdArg, "MAX_LOOKAHEAD")) {
    newOrProd.maxLookahead = mainProdArg.MAX_LOOKAHEAD;
  }
  const hasPredicates = some_default(alts, (currAlt) => isFunction_default(currAlt.GATE));
  newOrProd.hasPredicates = hasPredicates;
  prevProd.definition.push(newOrProd);
  forEach_default(alts, (currAlt) => {
    const currAltFlat = new Alternative({ definition: [] });
    newOrProd.definition.push(currAltFlat);
    if (has_default(currAlt, "IGNORE_AMBIGUITIES")) {
      currAltFlat.ignoreAmbiguities = currAlt.IGNORE_AMBIGUITIES;
    } else if (has_default(currAlt, "GATE")) {
      currAltFlat.ignoreAmbiguities = true;
    }
    this.recordingProdStack.push(currAltFlat);
    currAlt.ALT.call(this);
    this.recordingProdStack.pop();
  });
  return RECORDING_NULL_OBJECT;
}
function getIdxSuffix(idx) {
  return idx === 0 ? "" : `${idx}`;
}
function assertMethodIdxIsValid(idx) {
  if (idx < 0 || idx > MAX_METHOD_IDX) {
    const error = new Error(
      // The stack trace will contain all the needed details
      `Invalid DSL Method idx value: <${idx}>
	Idx value must be a none negative value smaller than ${MAX_METHOD_IDX + 1}`
    );
    error.KNOWN_RECORDER_ERROR = true;
    throw error;
  }
}

// node_modules/chevrotain/lib/src/parse/parser/traits/perf_tracer.js
var PerformanceTracer = class {
  initPerformanceTracer(config) {
    if (has_default(config, "traceInitPerf")) {
      const userTraceInitPerf = config.traceInitPerf;
      const traceIsNumber = typeof userTraceInitPerf === "number";
      this.traceInitMaxIdent = traceIsNumber ? userTraceInitPerf : Infinity;
      this.traceInitPerf = traceIsNumber ? userTraceInitPerf > 0 : userTraceInitPerf;
    } else {
      this.traceInitMaxIdent = 0;
      this.traceInitPerf = DEFAULT_PARSER_CONFIG.traceInitPerf;
    }
    this.traceInitIndent = -1;
  }
  TRACE_INIT(phaseDesc, phaseImpl) {
    if (this.traceInitPerf === true) {
      this.traceInitIndent++;
      const indent = new Array(this.traceInitIndent + 1).join("	");
      if (this.traceInitIndent < this.traceInitMaxIdent) {
        console.log(`${indent}--> <${phaseDesc}>`);
      }
      const { time: time2, value: value2 } = timer(phaseImpl);
      const traceMethod = time2 > 10 ? console.warn : console.log;
      if (this.traceInitIndent < this.traceInitMaxIdent) {
        traceMethod(`${indent}<-- <${phaseDesc}> time: ${time2}ms`);
      }
      this.traceInitIndent--;
      return value2;
    } else {
      return phaseImpl();
    }
  }
};

// node_modules/chevrotain/lib/src/parse/parser/utils/apply_mixins.js
function applyMixins(derivedCtor, baseCtors) {
  baseCtors.forEach((baseCtor) => {
    const baseProto = baseCtor.prototype;
    Object.getOwnPropertyNames(baseProto).forEach((propName) => {
      if (propName === "constructor") {
        return;
      }
      const basePropDescriptor = Object.getOwnPropertyDescriptor(baseProto, propName);
      if (basePropDescriptor && (basePropDescriptor.get || basePropDescriptor.set)) {
        Object.defineProperty(derivedCtor.prototype, propName, basePropDescriptor);
      } else {
        derivedCtor.prototype[propName] = baseCtor.prototype[propName];
      }
    });
  });
}

// node_modules/chevrotain/lib/src/parse/parser/parser.js
var END_OF_FILE = createTokenInstance(EOF, "", NaN, NaN, NaN, NaN, NaN, NaN);
Object.freeze(END_OF_FILE);
var DEFAULT_PARSER_CONFIG = Object.freeze({
  recoveryEnabled: false,
  maxLookahead: 3,
  dynamicTokensEnabled: false,
  outputCst: true,
  errorMessageProvider: defaultParserErrorProvider,
  nodeLocationTracking: "none",
  traceInitPerf: false,
  skipValidations: false
});
var DEFAULT_RULE_CONFIG = Object.freeze({
  recoveryValueFunc: () => void 0,
  resyncEnabled: true
});
var ParserDefinitionErrorType;
(function(ParserDefinitionErrorType2) {
  ParserDefinitionErrorType2[ParserDefinitionErrorType2["INVALID_RULE_NAME"] = 0] = "INVALID_RULE_NAME";
  ParserDefinitionErrorType2[ParserDefinitionErrorType2["DUPLICATE_RULE_NAME"] = 1] = "DUPLICATE_RULE_NAME";
  ParserDefinitionErrorType2[ParserDefinitionErrorType2["INVALID_RULE_OVERRIDE"] = 2] = "INVALID_RULE_OVERRIDE";
  ParserDefinitionErrorType2[ParserDefinitionErrorType2["DUPLICATE_PRODUCTIONS"] = 3] = "DUPLICATE_PRODUCTIONS";
  ParserDefinitionErrorType2[ParserDefinitionErrorType2["UNRESOLVED_SUBRULE_REF"] = 4] = "UNRESOLVED_SUBRULE_REF";
  ParserDefinitionErrorType2[ParserDefinitionErrorType2["LEFT_RECURSION"] = 5] = "LEFT_RECURSION";
  ParserDefinitionErrorType2[ParserDefinitionErrorType2["NONE_LAST_EMPTY_ALT"] = 6] = "NONE_LAST_EMPTY_ALT";
  ParserDefinitionErrorType2[ParserDefinitionErrorType2["AMBIGUOUS_ALTS"] = 7] = "AMBIGUOUS_ALTS";
  ParserDefinitionErrorType2[ParserDefinitionErrorType2["CONFLICT_TOKENS_RULES_NAMESPACE"] = 8] = "CONFLICT_TOKENS_RULES_NAMESPACE";
  ParserDefinitionErrorType2[ParserDefinitionErrorType2["INVALID_TOKEN_NAME"] = 9] = "INVALID_TOKEN_NAME";
  ParserDefinitionErrorType2[ParserDefinitionErrorType2["NO_NON_EMPTY_LOOKAHEAD"] = 10] = "NO_NON_EMPTY_LOOKAHEAD";
  ParserDefinitionErrorType2[ParserDefinitionErrorType2["AMBIGUOUS_PREFIX_ALTS"] = 11] = "AMBIGUOUS_PREFIX_ALTS";
  ParserDefinitionErrorType2[ParserDefinitionErrorType2["TOO_MANY_ALTS"] = 12] = "TOO_MANY_ALTS";
  ParserDefinitionErrorType2[ParserDefinitionErrorType2["CUSTOM_LOOKAHEAD_VALIDATION"] = 13] = "CUSTOM_LOOKAHEAD_VALIDATION";
})(ParserDefinitionErrorType || (ParserDefinitionErrorType = {}));
var Parser = class _Parser {
  /**
   *  @deprecated use the **instance** method with the same name instead
   */
  static performSelfAnalysis(parserInstance) {
    throw Error("The **static** `performSelfAnalysis` method has been deprecated.	\nUse the **instance** method with the same name instead.");
  }
  performSelfAnalysis() {
    this.TRACE_INIT("performSelfAnalysis", () => {
      let defErrorsMsgs;
      this.selfAnalysisDone = true;
      const className = this.className;
      this.TRACE_INIT("toFastProps", () => {
        toFastProperties(this);
      });
      this.TRACE_INIT("Grammar Recording", () => {
        try {
          this.enableRecording();
          forEach_default(this.definedRulesNames, (currRuleName) => {
            const wrappedRule = this[currRuleName];
            const originalGrammarAction = wrappedRule["originalGrammarAction"];
            let recordedRuleGast;
            this.TRACE_INIT(`${currRuleName} Rule`, () => {
              recordedRuleGast = this.topLevelRuleRecord(currRuleName, originalGrammarAction);
            });
            this.gastProductionsCache[currRuleName] = recordedRuleGast;
          });
        } finally {
          this.disableRecording();
        }
      });
      let resolverErrors = [];
      this.TRACE_INIT("Grammar Resolving", () => {
        resolverErrors = resolveGrammar2({
          rules: values_default(this.gastProductionsCache)
        });
        this.definitionErrors = this.definitionErrors.concat(resolverErrors);
      });
      this.TRACE_INIT("Grammar Validations", () => {
        if (isEmpty_default(resolverErrors) && this.skipValidations === false) {
          const validationErrors = validateGrammar2({
            rules: values_default(this.gastProductionsCache),
            tokenTypes: values_default(this.tokensMap),
            errMsgProvider: defaultGrammarValidatorErrorProvider,
            grammarName: className
          });
          const lookaheadValidationErrors = validateLookahead({
            lookaheadStrategy: this.lookaheadStrategy,
            rules: values_default(this.gastProductionsCache),
            tokenTypes: values_default(this.tokensMap),
            grammarName: className
          });
          this.definitionErrors = this.definitionErrors.concat(validationErrors, lookaheadValidationErrors);
        }
      });
      if (isEmpty_default(this.definitionErrors)) {
        if (this.recoveryEnabled) {
          this.TRACE_INIT("computeAllProdsFollows", () => {
            const allFollows = computeAllProdsFollows(values_default(this.gastProductionsCache));
            this.resyncFollows = allFollows;
          });
        }
        this.TRACE_INIT("ComputeLookaheadFunctions", () => {
          var _a, _b;
          (_b = (_a = this.lookaheadStrategy).initialize) === null || _b === void 0 ? void 0 : _b.call(_a, {
            rules: values_default(this.gastProductionsCache)
          });
          this.preComputeLookaheadFunctions(values_default(this.gastProductionsCache));
        });
      }
      if (!_Parser.DEFER_DEFINITION_ERRORS_HANDLING && !isEmpty_default(this.definitionErrors)) {
        defErrorsMsgs = map_default(this.definitionErrors, (defError) => defError.message);
        throw new Error(`Parser Definition Errors detected:
 ${defErrorsMsgs.join("\n-------------------------------\n")}`);
      }
    });
  }
  constructor(tokenVocabulary, config) {
    this.definitionErrors = [];
    this.selfAnalysisDone = false;
    const that = this;
    that.initErrorHandler(config);
    that.initLexerAdapter();
    that.initLooksAhead(config);
    that.initRecognizerEngine(tokenVocabulary, config);
    that.initRecoverable(config);
    that.initTreeBuilder(config);
    that.initContentAssist();
    that.initGastRecorder(config);
    that.initPerformanceTracer(config);
    if (has_default(config, "ignoredIssues")) {
      throw new Error("The <ignoredIssues> IParserConfig property has been deprecated.\n	Please use the <IGNORE_AMBIGUITIES> flag on the relevant DSL method instead.\n	See: https://chevrotain.io/docs/guide/resolving_grammar_errors.html#IGNORING_AMBIGUITIES\n	For further details.");
    }
    this.skipValidations = has_default(config, "skipValidations") ? config.skipValidations : DEFAULT_PARSER_CONFIG.skipValidations;
  }
};
Parser.DEFER_DEFINITION_ERRORS_HANDLING = false;
applyMixins(Parser, [
  Recoverable,
  LooksAhead,
  TreeBuilder,
  LexerAdapter,
  RecognizerEngine,
  RecognizerApi,
  ErrorHandler,
  ContentAssist,
  GastRecorder,
  PerformanceTracer
]);
var EmbeddedActionsParser = class extends Parser {
  constructor(tokenVocabulary, config = DEFAULT_PARSER_CONFIG) {
    const configClone = clone_default(config);
    configClone.outputCst = false;
    super(tokenVocabulary, configClone);
  }
};

// grammar/lanes/tokens.ts
var token = (name3, pattern, options2 = {}) => createToken({
  name: name3,
  pattern: new RegExp(pattern),
  line_breaks: false,
  ...options2.skipped === true ? { group: Lexer.SKIPPED } : {}
});
var anyCharacter = [
  ...Array.from({ length: 256 }, (_, code) => code),
  ...Array.from({ length: 257 }, (_, block) => Math.min(256 + block * 255, 65535))
];
var { afterEvent, afterWord, inRound: inRound2 } = source;
var Space = createToken({
  name: "Space",
  pattern: /\s+/,
  group: Lexer.SKIPPED,
  line_breaks: true
});
var Comment = token("Comment", "//[^\\n]*", { skipped: true });
var Quoted = token("Quoted", source.string);
var OpenQuote = token("OpenQuote", '"[^\\n|]*');
var CurlyQuoted = token("CurlyQuoted", '[\u201C\u201D\u201E\xAB\xBB\u201F][^\\n|"\u201C\u201D\u201E\xAB\xBB\u201F]*[\u201C\u201D\u201E\xAB\xBB\u201F]?');
var Bar = token("Bar", source.barline);
var BadBar = token("BadBar", ":*\\|[|:]*(?:\\[\\])?");
var SpanOpen = token("SpanOpen", source.spanHead);
var BareOpen = token("BareOpen", "\\{");
var SpanClose = token("SpanClose", "\\}");
var OptionsOpen = token("OptionsOpen", source.optionHead);
var BareOptions = token("BareOptions", "<");
var OptionNext = token("OptionNext", source.optionNext);
var BareNext = token("BareNext", ";");
var OptionsClose = token("OptionsClose", ">");
var Round = token("Round", `\\(${inRound2}(?:"[^"\\n]*"${inRound2}){0,99}\\)`);
var Lost = token("Lost", `lost(?:[ \\t]+(?:${source.value}|\\?))?${afterWord}`);
var BarRest = token("BarRest", `rbar${afterEvent}`);
var Rest = token("Rest", `r${afterEvent}`);
var BarGap = token("BarGap", `__${afterEvent}`);
var Gap = token("Gap", `_${afterEvent}`);
var Omit = token("Omit", `omit${afterWord}`);
var Value = token("Value", `${source.value}${afterWord}`);
var Note = token("Note", `${source.spelling}(?:${source.tie})?${afterEvent}`);
var Member = token("Member", `-(?:\\((?:up|down|home)\\))?${source.spelling}(?:${source.tie})?${afterEvent}`);
var Repeat = token("Repeat", `${source.tie}${afterEvent}`);
var MarkToken = token("Mark", `${source.mark}${afterEvent}`);
var Annotated = token("Annotated", `${source.annotation}${afterEvent}`);
var Beam = token("Beam", "[&,](?!(?!//)\\S)");
var JunkToken = createToken({
  name: "Junk",
  // One slip is one junk: `f5(#)`, `c5"x"`, `K:`. A comment ends it.
  pattern: /(?:[^\s|{}<>;:"(/]+|\/(?!\/)|:+(?!\|)|\((?:##|#|bb|b|n)\))(?:[^\s|{}<>;:"(/]+|\/(?!\/)|:+(?!\|)|"[^"\n|]*"|\((?:##|#|bb|b|n)\)){0,1000}|[:"(]/,
  start_chars_hint: anyCharacter,
  line_breaks: false
});
var Again = createToken({ name: "Again", pattern: Lexer.NA });
var laneTokens = [
  Space,
  Comment,
  Bar,
  BadBar,
  Note,
  Value,
  MarkToken,
  Member,
  Rest,
  BarRest,
  BarGap,
  Gap,
  Repeat,
  Lost,
  Omit,
  Annotated,
  Beam,
  SpanOpen,
  BareOpen,
  SpanClose,
  OptionsOpen,
  BareOptions,
  OptionNext,
  BareNext,
  OptionsClose,
  Round,
  Quoted,
  OpenQuote,
  CurlyQuoted,
  JunkToken
];
var laneLexer = new Lexer(laneTokens, { ensureOptimizations: true, positionTracking: "onlyOffset" });
var SubItem = createToken({
  name: "SubItem",
  pattern: /(?:[^\s|"/]+|\/(?!\/)){1,1000}/,
  start_chars_hint: anyCharacter,
  line_breaks: false
});
var subLaneLexer = new Lexer([Space, Comment, Bar, BadBar, Quoted, OpenQuote, SubItem], {
  ensureOptimizations: true,
  positionTracking: "onlyOffset"
});

// grammar/lanes/balance.ts
var DEEPEST = 32;
var openers = /* @__PURE__ */ new Map([
  [SpanOpen, "{"],
  [BareOpen, "{"],
  [OptionsOpen, "<"],
  [BareOptions, "<"]
]);
var closers = /* @__PURE__ */ new Map([
  [SpanClose, "{"],
  [OptionsClose, "<"]
]);
var nexts = /* @__PURE__ */ new Set([OptionNext, BareNext]);
function becomeJunk(token2) {
  token2.tokenType = JunkToken;
  token2.tokenTypeIdx = JunkToken.tokenTypeIdx ?? 0;
}
var closing = { "{": "}", "<": ">" };
function balance(tokens, problems) {
  const stack = [];
  const report = (code, token2, bracket) => {
    problems.push({
      code,
      pos: token2.startOffset,
      len: 1,
      slots: { bracket, closing: closing[bracket] ?? bracket, deepest: DEEPEST }
    });
  };
  const opened = { "{": 0, "<": 0 };
  const innermost = (kind) => opened[kind] === 0 ? -1 : stack.findLastIndex((open) => open.kind === kind);
  const unclosed = (open) => {
    opened[open.kind]--;
    if (open.ignored) return;
    becomeJunk(open.token);
    open.nexts.forEach(becomeJunk);
    report("unclosed-bracket", open.token, open.kind);
  };
  const close = (token2, kind) => {
    const at = innermost(kind);
    if (at < 0) {
      becomeJunk(token2);
      report("stray-bracket", token2, closing[kind]);
      return;
    }
    stack.splice(at + 1).forEach(unclosed);
    opened[kind]--;
    if (stack.pop()?.ignored === true) becomeJunk(token2);
  };
  const next = (token2) => {
    const at = innermost("<");
    if (at < 0) {
      becomeJunk(token2);
      report("stray-bracket", token2, ";");
      return;
    }
    stack.splice(at + 1).forEach(unclosed);
    stack[at]?.nexts.push(token2);
    if (stack[at]?.ignored === true) becomeJunk(token2);
  };
  for (const token2 of tokens) {
    const opens2 = openers.get(token2.tokenType);
    const closes2 = closers.get(token2.tokenType);
    if (opens2 !== void 0) {
      const ignored = stack.length >= DEEPEST;
      if (ignored) {
        becomeJunk(token2);
        if (stack.length === DEEPEST) report("too-deep", token2, opens2);
      }
      opened[opens2]++;
      stack.push({ token: token2, kind: opens2, ignored, nexts: [] });
    } else if (closes2 !== void 0) close(token2, closes2);
    else if (nexts.has(token2.tokenType)) next(token2);
  }
  stack.forEach(unclosed);
}

// grammar/nearest.ts
var LONGEST = 32;
var forgiven = (word) => Math.max(1, Math.floor(word.length / 3));
function slips(a, b, most) {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before = [];
  let last2 = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row3 = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      row3[j] = Math.min(
        (last2[j] ?? 0) + 1,
        (row3[j - 1] ?? 0) + 1,
        (last2[j - 1] ?? 0) + (same ? 0 : 1),
        swapped ? (before[j - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY
      );
    }
    if (Math.min(...row3) > most) return most + 1;
    [before, last2] = [last2, row3];
  }
  return last2[b.length] ?? most + 1;
}
function nearest(word, candidates) {
  if (word.length > LONGEST) return void 0;
  const small2 = word.toLowerCase();
  let best;
  let fewest = forgiven(word);
  for (const candidate of candidates) {
    const most = Math.min(fewest, candidate.length - 2);
    const count = candidate.toLowerCase() === small2 ? 0 : slips(small2, candidate.toLowerCase(), Math.max(most, 0));
    if (count > Math.max(most, 0) || count === fewest && best !== void 0) continue;
    best = candidate;
    fewest = count;
  }
  return best;
}

// grammar/vocabulary/clefs.ts
var clefLetters = {
  G: { position: 32, describe: "G clef: the g above middle C" },
  C: { position: 28, describe: "C clef: middle C" },
  F: { position: 24, describe: "F clef: the f below middle C" }
};
var MOST_LINES = 8;
var FEWEST_LINES = 4;
var lineUnder = (clef, line) => clefLetters[clef.letter].position + 2 * (line - clef.line);
var agreeingLine = (clef, other) => other.line + (clefLetters[clef.letter].position - clefLetters[other.letter].position) / 2;
var clefsAgree = (a, b) => lineUnder(a, 1) === lineUnder(b, 1);
var looksLikeClef = (text) => /^[A-Za-z]\d+(?:\+|$)/.test(text);
var clefPattern = /^([GCF])(\d)$/;
function clefOf(text) {
  const match = clefPattern.exec(text);
  const line = Number(match?.[2]);
  return match === null || line < 1 || line > MOST_LINES ? void 0 : { letter: match[1], line };
}
var clefText = (clef) => `${clef.letter}${clef.line}`;
function clefMeant(text) {
  const upper = text.toUpperCase();
  return upper !== text && upper.split("+").every((part) => clefOf(part) !== void 0) ? upper : void 0;
}

// grammar/vocabulary/parts.ts
var free = (id, take, what, more = {}) => ({
  kind: "free",
  id,
  take,
  what,
  ...more
});
var given = (role, what, more = {}) => free(role, "name", what, { role, declares: true, ...more });
var cited = (role, what, more = {}) => free(role, "name", what, { role, ...more });
var words = (what, list, placing = {}) => ({
  kind: "words",
  what,
  words: Object.fromEntries(
    Object.entries(list).map(([word, entry]) => [word, typeof entry === "string" ? { describe: entry } : entry])
  ),
  ...placing
});
var either = (what, forms, placing = {}) => ({
  kind: "either",
  what,
  forms,
  ...placing
});

// grammar/vocabulary/statements.ts
var nothing = [];
var optional = { optional: true };
var description = free("description", "string", "a description in quotes");
var lines = {
  describe: "The number of lines drawn, counted from the bottom.",
  parts: [free("count", "whole", "a number of lines", { range: { low: FEWEST_LINES, high: MOST_LINES } })]
};
var accidentals = words("a reach of accidentals", {
  note: "for its note and the immediate repetitions of it",
  group: "for the notes under one beam",
  bar: "to the barline, in its octave, for all voices of the stave"
});
var tempo = [
  free("value", "value", "a note value"),
  free("rate", "decimal", "a number a minute", { after: "at", range: { low: 5, high: 600 } })
];
var meter = [
  free("sign", "meter", "the meter sign as drawn"),
  free("length", "barLength", "the length of a bar, such as 3/2", { after: "=", optional: true })
];
var signTable = cited("table", "the name of a sign table");
var tuning = either("a tuning", [
  [
    words("a tuning", {
      meantone: {
        describe: "Eleven equal narrow fifths and a wolf.",
        follow: [
          free("comma", "commaPart", "the part of a comma by which each fifth is narrow, such as 1/4"),
          free("wolf", "fifth", "the fifth that is left wide, such as g#-eb", { after: "wolf", optional: true })
        ]
      }
    })
  ],
  [cited("temperament", "the name of a temperament")]
]);
var order = cited("section", "the name of a section", { repeat: true });
var practiceScope = [
  cited("section", "the name of a section", { after: "in", optional: true }),
  cited("voice", "the name of a voice", { after: "voice", optional: true })
];
var practised = (describe, ...follow) => ({
  describe,
  follow: [...follow, ...practiceScope]
});
var practice = words("a practice", {
  overdot: practised(
    "Dotted notes are stretched and what follows is shortened.",
    words("an extent", { double: "as if dotted twice", shortest: "to the shortest figure in the section" }, optional),
    words(
      "a way to fill the dot",
      { held: "the note sounds through the dot", silent: "a silence for the dot" },
      optional
    )
  ),
  inegal: practised(
    "Pairs of equal notes are played unequally.",
    either(
      "the values that are unequal",
      [
        [free("value", "value", "a note value")],
        [words("the values that are unequal", { "by-meter": "the values that the meter makes unequal" })]
      ],
      optional
    ),
    free("ratio", "shares", "the lengths of the two notes, such as 3:2", optional),
    words("a condition", { stepwise: "only in pairs that move by step" }, optional),
    words(
      "the place of the long note",
      { "long-short": "the first of the pair", "short-long": "the second of the pair" },
      optional
    )
  ),
  assimilate: practised(
    "Duple figures against triplets.",
    words("a way of meeting", {
      triplet: "the duple figure takes the time of the triplet",
      duple: "the triplet takes the time of the duple figure",
      literal: "each as it is written"
    })
  ),
  snap: practised("Dotted pairs with the short note first are sharpened."),
  upbeats: practised("Upbeat figures.", words("a time", { late: "at the last moment, as fast as they can be" })),
  hemiola: practised("Two bars of three are played as three of two where the source shows it.")
});
var stateClauses = {
  key: {
    describe: "The signature: the signs as drawn, `none` takes it away.",
    repeats: true,
    parts: [
      cited("stave", "the name of a stave", optional),
      either("the signs of a signature, such as bb, or none", [
        [words("a signature", { none: "no signature" })],
        [free("sign", "keySign", "a note with its sign, such as bb or f#4", { repeat: true })]
      ])
    ]
  },
  meter: { describe: "The meter sign as drawn; `= 3/2` where a bar has another length than usual.", parts: meter },
  tempo: { describe: "How many of a value go to a minute.", parts: tempo }
};
var clefPart = free("clef", "clef", "a clef, such as C1 or F4+C6");
var statements = {
  bentside: {
    describe: "The edition of the notation in which the file is written.",
    parts: [words("an edition of the notation", { "1": "the first edition" })],
    clauses: {}
  },
  title: { describe: "The title of the whole.", parts: [free("text", "string", "the title in quotes")], clauses: {} },
  source: {
    describe: "A source of the text, a witness.",
    parts: [given("witness", "the letter or name of a source"), description],
    clauses: {},
    repeats: true
  },
  hand: {
    describe: "A layer of a source: another hand or a later state.",
    parts: [given("layer", "a source and the number of its layer, such as K.2"), description],
    clauses: {},
    repeats: true
  },
  editor: {
    describe: "A person who signs annotations.",
    parts: [given("editor", "the letters of an editor"), free("name", "string", "the editor's name in quotes")],
    clauses: {},
    repeats: true
  },
  reading: {
    describe: "A named bundle of choices: what is taken and how it is played.",
    parts: [given("reading", "the name of a reading"), { ...description, optional: true }],
    repeats: true,
    clauses: {
      from: { describe: "The reading on which this one is built.", parts: [cited("reading", "the name of a reading")] },
      takes: {
        describe: "The witnesses whose options are taken, the preferred first.",
        parts: [free("labels", "names", "the names of witnesses, such as K,L", { role: "label" })]
      },
      signs: { describe: "The table by which signs are played.", parts: [signTable] },
      practice: { describe: "A practice of rhythm.", parts: [practice], repeats: true },
      accidentals: { describe: "How long a written accidental holds.", parts: [accidentals] },
      tuning: { describe: "The tuning.", parts: [tuning] },
      tempo: { describe: "The tempo.", parts: tempo },
      order: { describe: "The sections in the order of playing.", parts: [order] },
      at: {
        describe: "What is taken at one named place.",
        repeats: true,
        parts: [
          cited("place", "the name of a place"),
          cited("label", "the name of a witness or reading", { after: "takes" })
        ]
      }
    }
  },
  instrument: {
    describe: "The instrument, its compass and manuals.",
    parts: [given("instrument", "the name of an instrument")],
    clauses: {
      compass: {
        describe: "The lowest and the highest key.",
        parts: [free("keys", "compass", "the lowest and the highest key, such as g1-d6")]
      },
      "short-octave": {
        describe: "A short octave: what the lowest keys sound.",
        parts: [
          words("a short octave", { "c/e": "the key of e sounds c", "g/b": "the key of b sounds g" }),
          words("a word about its sharps", { broken: "its sharps are divided in two" }, optional)
        ]
      },
      split: {
        describe: "Keys that are divided for two notes.",
        parts: [free("key", "splitKey", "the two notes of a divided key, such as d#/eb", { repeat: true })],
        repeats: true
      }
    },
    rows: {
      kind: "manual",
      word: "manual",
      describe: "A manual and its stops.",
      parts: [given("manual", "the name of a manual")],
      clauses: {
        stops: {
          describe: "The stops by their length in feet.",
          parts: [free("feet", "whole", "a length in feet", { repeat: true, range: { low: 1, high: 32 } })]
        }
      }
    }
  },
  pitch: {
    describe: "The pitch standard: the frequency of the a above middle C.",
    parts: [
      free("note", "pitchOfA", "a4"),
      free("frequency", "decimal", "the frequency in hertz", { after: "=", range: { low: 300, high: 600 } })
    ],
    clauses: {}
  },
  tuning: { describe: "The tuning.", parts: [tuning], clauses: {} },
  temperament: {
    describe: "A temperament of our own: a row for each fifth that is not as in the one it comes from, or pure.",
    parts: [given("temperament", "the name of a temperament")],
    clauses: {
      from: {
        describe: "The temperament from which it comes.",
        parts: [cited("temperament", "the name of a temperament")]
      }
    },
    repeats: true,
    rows: {
      kind: "fifth",
      describe: "A fifth and how far it is from pure.",
      parts: [
        free("fifth", "fifth", "a fifth, such as c-g"),
        either("a distance from pure, such as -1/4 sc, 2.0 beats narrow, or rest", [
          [words("the rest of the circle", { rest: "this fifth takes what the circle still lacks" })],
          [
            free("part", "tempering", "a part of a comma, such as -1/4"),
            words("a comma", { sc: "the syntonic comma", pc: "the Pythagorean comma" })
          ],
          [
            free("rate", "decimal", "beats a second", { range: { low: 0, high: 50 } }),
            words("a direction", { narrow: "narrower than pure", wide: "wider than pure" }, { after: "beats" })
          ]
        ])
      ],
      clauses: {}
    }
  },
  tempo: { describe: "How many of a value go to a minute.", parts: tempo, clauses: {}, repeats: true },
  accidentals: {
    describe: "How long a written accidental holds in the source.",
    parts: [accidentals],
    clauses: {}
  },
  beaming: {
    describe: "How notes are beamed where the lanes do not say.",
    parts: [
      free("value", "value", "a note value"),
      free("number", "whole", "a number of notes", { after: "by", range: { low: 1, high: 64 } })
    ],
    clauses: {},
    repeats: true
  },
  stave: {
    describe: "A stave.",
    parts: [given("stave", "the name of a stave")],
    clauses: { lines },
    repeats: true
  },
  voice: {
    describe: "A voice and the stave on which it stands; without one it has a stave of its own.",
    parts: [given("voice", "the name of a voice"), cited("stave", "the name of a stave", optional)],
    clauses: {
      stems: {
        describe: "Which way its stems point where two voices share the stave.",
        parts: [words("a direction", { up: "upwards", down: "downwards" })]
      },
      lines
    },
    repeats: true
  },
  page: {
    describe: "A page or leaf of the source begins.",
    parts: [free("label", "string", "the number of the page or leaf in quotes")],
    clauses: { image: { describe: "Its picture.", parts: [free("file", "string", "a file name in quotes")] } },
    repeats: true
  },
  system: {
    describe: "A system of the source; its lanes follow.",
    parts: [
      words(
        "a kind of system",
        {
          loose: "values count, barlines of the lanes need not agree",
          free: "no measured time"
        },
        optional
      )
    ],
    clauses: {
      clef: {
        describe: "The clef drawn at the head of a stave.",
        opens: "staveAndClef",
        parts: [cited("stave", "the name of a stave"), clefPart],
        repeats: true
      },
      ...stateClauses,
      at: {
        describe: "Where the system lies on the picture of the page.",
        parts: [free("region", "region", "left, top, width and height, such as 120,340,1800,410")]
      }
    },
    repeats: true
  },
  piece: {
    describe: "A movement begins, with its own bars and state.",
    parts: [free("name", "string", "the name of the movement in quotes")],
    clauses: {},
    repeats: true
  },
  include: {
    describe: "Brings the tables, people and sources of another file.",
    parts: [free("file", "string", "a file name in quotes")],
    clauses: {},
    repeats: true
  },
  section: {
    describe: "A section begins with the next system.",
    parts: [
      given("section", "the name of a section"),
      free("within", "name", "the name of the section of which it is a part", {
        role: "section",
        after: "in",
        optional: true
      })
    ],
    clauses: {},
    repeats: true
  },
  order: { describe: "The sections in the order of playing.", parts: [order], clauses: {}, repeats: true },
  signs: { describe: "The table by which signs are played.", parts: [signTable], clauses: {} },
  practice: { describe: "A practice of rhythm for every reading.", parts: [practice], clauses: {}, repeats: true },
  table: {
    describe: "A sign table of our own: how each sign is played.",
    parts: [given("table", "the name of a sign table")],
    clauses: { from: { describe: "The table from which it comes.", parts: [signTable] } },
    repeats: true,
    rows: {
      kind: "sign",
      describe: "A sign, the name that the table gives it, and how it is played.",
      parts: [
        free("shapes", "shapes", "a sign, or signs typed together, such as cb+ca"),
        free("name", "string", "the table's name for it in quotes", optional)
      ],
      clauses: {
        when: {
          describe: "Where the row fits.",
          parts: [
            words("a condition", {
              rising: "the note before is lower",
              falling: "the note before is higher",
              dotted: "the note is dotted",
              "before rest": "a rest follows",
              "slurred from above": "a curve leads to it from the note above"
            })
          ],
          repeats: true
        },
        scope: { describe: "What the sign covers.", parts: [words("an extent", { chord: "the whole chord" })] }
      },
      recipe: true
    }
  },
  note: {
    describe: "A full annotation.",
    parts: [given("note", "the name of an annotation")],
    clauses: {
      kind: {
        describe: "What it is about.",
        parts: [
          words("a kind of annotation", {
            reading: "what the source has, or how it can be read",
            emendation: "the editor mends the source",
            pitch: "pitch and accidentals",
            rhythm: "values, bars and meter",
            ornament: "signs",
            fingering: "fingering",
            layout: "beams, stems, clefs and the page",
            performance: "how it is played"
          })
        ]
      },
      by: { describe: "Who says so.", parts: [cited("editor", "the letters of an editor")] },
      certainty: {
        describe: "How sure it is.",
        parts: [
          words("a degree of certainty", {
            high: "hardly to be doubted",
            medium: "likely",
            low: "a guess",
            unknown: "not weighed"
          })
        ]
      },
      evidence: { describe: "On what it rests.", parts: [free("text", "string", "the evidence in quotes")] },
      text: { describe: "What is said.", opens: ":", parts: [free("text", "string", "the text in quotes")] }
    },
    repeats: true
  },
  link: {
    describe: "Places that are decided together.",
    parts: [
      cited("place", "the name of a place"),
      free("other", "name", "the name of another place", { role: "place", repeat: true })
    ],
    clauses: {},
    repeats: true
  }
};
var changes = {
  now: {
    describe: "The source changes clef, signature, meter or tempo here.",
    parts: nothing,
    clauses: {
      clef: { describe: "The clef drawn here, on the stave where the lane stands.", opens: "clef", parts: [clefPart] },
      ...stateClauses
    }
  },
  up: { describe: "Goes on on the stave above.", parts: nothing, clauses: {} },
  down: { describe: "Goes on on the stave below.", parts: nothing, clauses: {} },
  home: { describe: "Returns to its own stave.", parts: nothing, clauses: {} },
  stems: {
    describe: "Which way the stems point from here.",
    parts: [words("a direction", { up: "upwards", down: "downwards" })],
    clauses: {}
  },
  manual: { describe: "The manual from here.", parts: [cited("manual", "the name of a manual")], clauses: {} },
  custos: {
    describe: "The sign at the line end for the note with which the next line begins.",
    parts: [free("pitch", "pitch", "a note with its octave, such as c5")],
    clauses: {}
  },
  ending: {
    describe: "The ending of this number begins.",
    parts: [free("number", "whole", "the number of the ending", { range: { low: 1, high: 99 } })],
    clauses: {}
  },
  section: {
    describe: "A section begins.",
    parts: statements.section?.parts ?? nothing,
    clauses: {}
  },
  irregular: { describe: "The bar is meant to be longer or shorter than its meter.", parts: nothing, clauses: {} }
};
var lookUp = (table, word) => Object.hasOwn(table, word) ? table[word] : void 0;

// grammar/statements/lexer.ts
var signs = /* @__PURE__ */ new Set(["=", ":", ",", "(", ")"]);
var typographic = /* @__PURE__ */ new Set(["\u201C", "\u201D", "\u201E", "\u201F", "\xAB", "\xBB"]);
var isSpace = (char) => char !== void 0 && /\s/.test(char);
var isDigit = (char) => char !== void 0 && char >= "0" && char <= "9";
var inWord = (char) => char !== void 0 && char !== '"' && !isSpace(char) && !signs.has(char) && !typographic.has(char);
var Lexer2 = class {
  constructor(text) {
    this.text = text;
  }
  text;
  tokens = [];
  problems = [];
  pos = 0;
  line = 0;
  read() {
    while (this.pos < this.text.length) this.next();
  }
  next() {
    const char = this.text[this.pos] ?? "";
    if (char === "\n") this.line++;
    if (isSpace(char)) this.pos++;
    else if (this.atComment(this.pos)) this.pos = this.lineEnd();
    else if (char === '"' || typographic.has(char)) this.string();
    else if (signs.has(char)) this.take(char, this.pos + 1, char);
    else this.word();
  }
  take(kind, end, text) {
    this.tokens.push({ kind, text, pos: this.pos, len: end - this.pos, line: this.line });
    this.pos = end;
  }
  atComment(pos) {
    return this.text[pos] === "/" && this.text[pos + 1] === "/";
  }
  lineEnd() {
    const end = this.text.indexOf("\n", this.pos);
    return end < 0 ? this.text.length : end;
  }
  /** `K,L` and `3:2` are words; a comma or colon at a word's edge is a sign of its own. */
  joins(pos) {
    const char = this.text[pos];
    if (char === ",") return inWord(this.text[pos + 1]) && !this.atComment(pos + 1);
    return char === ":" && isDigit(this.text[pos - 1]) && isDigit(this.text[pos + 1]);
  }
  word() {
    let end = this.pos + 1;
    while (end < this.text.length && !this.atComment(end) && (inWord(this.text[end]) || this.joins(end))) end++;
    this.take("word", end, this.text.slice(this.pos, end));
  }
  string() {
    const [start, lineEnd] = [this.pos, this.lineEnd()];
    const straight = this.text[start] === '"';
    const end = this.closingQuote(start + 1, lineEnd, straight);
    if (end === void 0) {
      this.unclosed(start, lineEnd);
      return;
    }
    const plain = straight && this.text[end] === '"';
    const inner = this.text.slice(start + 1, end);
    if (!plain) this.typographicQuotes(start, end);
    this.take("string", end + 1, straight ? inner.replaceAll('""', '"') : inner);
  }
  /** Where the string ends; two straight quotes are one inside it. A typographic quote ends it if no straight one does. */
  closingQuote(from2, lineEnd, straight) {
    let instead;
    for (let pos = from2; pos < lineEnd; pos++) {
      const char = this.text[pos] ?? "";
      if (straight && char === '"' && this.text[pos + 1] === '"') pos++;
      else if (char === '"') return pos;
      else if (typographic.has(char)) {
        if (!straight) return pos;
        instead ??= pos;
      }
    }
    return instead;
  }
  typographicQuotes(start, end) {
    const edits = [start, end].filter((pos) => this.text[pos] !== '"').map((pos) => ({ pos, len: 1, text: '"' }));
    this.problems.push({
      code: "typographic-quotes",
      slots: { quote: this.text[edits[0]?.pos ?? start] ?? "" },
      pos: start,
      len: end + 1 - start,
      fixes: [{ title: "write straight quotes", edits }]
    });
  }
  unclosed(start, lineEnd) {
    let end = lineEnd;
    while (end > start + 1 && isSpace(this.text[end - 1])) end--;
    const opening = this.text[start] === '"' ? [] : [{ pos: start, len: 1, text: '"' }];
    this.problems.push({
      code: "unclosed-string",
      slots: {},
      pos: start,
      len: end - start,
      fixes: [
        { title: "close the quotes at the end of the line", edits: [...opening, { pos: end, len: 0, text: '"' }] }
      ]
    });
    this.take("string", end, this.text.slice(start + 1, end).replaceAll('""', '"'));
    this.pos = lineEnd;
  }
};
function lex(text) {
  const lexer = new Lexer2(text);
  lexer.read();
  return { tokens: lexer.tokens, problems: lexer.problems };
}

// grammar/time.ts
var ZERO = { n: 0, d: 1 };
function gcd(a, b) {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}
function bigGcd(a, b) {
  while (b !== 0n) [a, b] = [b, a % b];
  return a;
}
var fits = (value2) => value2 <= BigInt(Number.MAX_SAFE_INTEGER) && value2 >= -BigInt(Number.MAX_SAFE_INTEGER);
function fromBig(n, d) {
  if (d < 0n) [n, d] = [-n, -d];
  const common = bigGcd(n < 0n ? -n : n, d);
  if (common > 1n) [n, d] = [n / common, d / common];
  return fits(n) && fits(d) ? { n: Number(n), d: Number(d) } : { n, d };
}
function time(n, d = 1) {
  if (!Number.isSafeInteger(n) || !Number.isSafeInteger(d) || d === 0) throw new RangeError(`no exact time: ${n}/${d}`);
  if (d < 0) [n, d] = [-n, -d];
  const common = gcd(Math.abs(n), d);
  return common > 1 ? { n: n / common, d: d / common } : { n: n === 0 ? 0 : n, d };
}
var SMALL = 2 ** 26;
var small = (t) => typeof t.n === "number" && typeof t.d === "number" && t.n < SMALL && t.n > -SMALL && t.d < SMALL;
function add(a, b) {
  if (a.n === 0) return b;
  if (b.n === 0) return a;
  if (small(a) && small(b)) return a.d === b.d ? time(a.n + b.n, a.d) : time(a.n * b.d + b.n * a.d, a.d * b.d);
  return fromBig(BigInt(a.n) * BigInt(b.d) + BigInt(b.n) * BigInt(a.d), BigInt(a.d) * BigInt(b.d));
}
var negate2 = (a) => a.n === 0 ? ZERO : { n: -a.n, d: a.d };
var subtract = (a, b) => add(a, negate2(b));
function multiply(a, b) {
  if (small(a) && small(b)) return time(a.n * b.n, a.d * b.d);
  return fromBig(BigInt(a.n) * BigInt(b.n), BigInt(a.d) * BigInt(b.d));
}
function divide(a, b) {
  if (isZero(b)) throw new RangeError("division of a time by zero");
  if (small(a) && small(b)) return time(a.n * b.d, a.d * b.n);
  return fromBig(BigInt(a.n) * BigInt(b.d), BigInt(a.d) * BigInt(b.n));
}
var equal = (a, b) => a.n === b.n && a.d === b.d;
var isZero = (a) => a.n === 0;

// grammar/lanes/forms.ts
var KEPT = 2e4;
var LONGEST2 = 200;
var detached = (text) => text.split("").join("");
function interned(read) {
  const kept2 = /* @__PURE__ */ new Map();
  return (text) => {
    const known = kept2.get(text);
    if (known !== void 0) return known;
    if (text.length > LONGEST2) return read(text);
    const own = detached(text);
    const form = read(own);
    if (form === void 0) return void 0;
    if (kept2.size >= KEPT) kept2.clear();
    kept2.set(own, form);
    return form;
  };
}
var bases = new Map([
  ["Mx", time(8)],
  ["L", time(4)],
  ["B", time(2)],
  ...[1, 2, 4, 8, 16, 32, 64, 128].map((d) => [`${d}`, time(1, d)])
]);
var MOST_DOTS = 4;
var MOST_IN_RATIO = 99;
var valuePattern = /^(Mx|L|B|\d+)(\.*)(?:(x)(?:(\d+)in(\d+))?)?(\?)?$/;
var possible = (n) => n >= 1 && n <= MOST_IN_RATIO;
function durationOf(base, dots, n, m) {
  if (base === void 0 || dots > MOST_DOTS || !possible(n) || !possible(m)) return void 0;
  const dotted = subtract(multiply(base, time(2)), divide(base, time(2 ** dots)));
  return multiply(dotted, time(m, n));
}
var valueFormOf = interned((text) => {
  const match = valuePattern.exec(text);
  if (match === null) return void 0;
  const [, baseText = "", dotText = "", x, nText, mText, doubt] = match;
  const base = bases.get(baseText);
  const proportion = x === void 0 ? void 0 : { n: Number(nText ?? 3), m: Number(mText ?? 2), drawn: false };
  return {
    text,
    base: base ?? time(1),
    dots: dotText.length,
    ...proportion === void 0 ? {} : { proportion },
    doubtful: doubt !== void 0,
    duration: durationOf(base, dotText.length, proportion?.n ?? 1, proportion?.m ?? 1)
  };
});
var spellingPattern = new RegExp(
  `^([a-g])(${source.accidental})?(?:\\[(${source.accidental})\\]|\\((${source.accidental})\\))?(\\d)?(\\?)?$`
);
var spellingOf = interned((text) => {
  const match = spellingPattern.exec(text);
  if (match === null) return void 0;
  const [, letter, accidental2, editors, cautionary, octave, doubt] = match;
  return {
    text,
    letter,
    ...accidental2 === void 0 ? {} : { accidental: accidental2 },
    ...editors === void 0 ? {} : { editors },
    ...cautionary === void 0 ? {} : { cautionary },
    ...octave === void 0 ? {} : { octave: Number(octave) },
    doubtful: doubt !== void 0
  };
});
function readingsOf(text) {
  if (text === void 0) return void 0;
  const not = text.startsWith(":!");
  return { not, names: text.slice(not ? 2 : 1).split(",") };
}
var tiePattern = new RegExp(`^(\\[=\\]|=)(\\?)?(${source.readings})?$`);
var tieOf = interned((text) => {
  const match = tiePattern.exec(text);
  if (match === null) return void 0;
  const readings2 = readingsOf(match[3]);
  return {
    text,
    editors: match[1] === "[=]",
    doubtful: match[2] !== void 0,
    ...readings2 === void 0 ? {} : { readings: readings2 }
  };
});
var otherMarks = /* @__PURE__ */ new Set(["through", "fermata", "dot", "stroke", "renvoi", "fin"]);
var curves = /* @__PURE__ */ new Set(["u", "line"]);
var accidentals2 = /* @__PURE__ */ new Set(["#", "##", "b", "bb", "n"]);
var markPattern = new RegExp(
  `^'(?:\\[([^\\]]*)\\]|([^?+(:]*))(\\?)?(\\+)?(?:\\(([^()"\\n]*)\\))?(${source.readings})?$`
);
function markType(core) {
  if (/^[1-5]/.test(core)) return "finger";
  if (accidentals2.has(core)) return "accidental";
  if (core.startsWith(".")) return "curveEnd";
  const word = core.endsWith("~") ? core.slice(0, -1) : core;
  if (curves.has(word)) return "curveStart";
  if (/^w\d+$/.test(word)) return "weight";
  return otherMarks.has(word) ? "other" : "sign";
}
function markDetails(type, core) {
  if (type === "finger") return { fingers: core.split("-").map(Number) };
  if (type === "accidental") return { accidental: core };
  if (type === "weight") return { weight: Number(core.slice(1)) };
  const begunOn = type === "curveEnd" ? spellingOf(core.slice(1)) : void 0;
  return begunOn === void 0 ? {} : { begunOn };
}
var markOf = interned((text) => {
  const match = markPattern.exec(text);
  if (match === null) return void 0;
  const [, inBrackets, plain, doubt, linked, parameters, onlyIn] = match;
  const core = inBrackets ?? plain ?? "";
  const type = markType(core);
  const readings2 = readingsOf(onlyIn);
  return {
    text,
    type,
    name: type === "curveEnd" ? "." : core.replace(/~$/, ""),
    ...markDetails(type, core),
    openEnded: core.endsWith("~"),
    editors: inBrackets !== void 0,
    doubtful: doubt !== void 0,
    linked: linked !== void 0,
    parameters: parameters?.split(/[\s,]+/).filter((word) => word !== "") ?? [],
    ...readings2 === void 0 ? {} : { readings: readings2 }
  };
});
var spanWords = /* @__PURE__ */ new Map([
  ["overdot", { readings: true, proportion: false, ratio: false }],
  ["inegal", { readings: true, proportion: false, ratio: true }],
  ["assimilate", { readings: true, proportion: false, ratio: false }],
  ["snap", { readings: true, proportion: false, ratio: false }],
  ["literal", { readings: true, proportion: false, ratio: false }],
  ["small", { readings: false, proportion: false, ratio: false }],
  ["black", { readings: false, proportion: true, ratio: false }],
  ["void", { readings: false, proportion: true, ratio: false }],
  ["lig", { readings: false, proportion: false, ratio: false }],
  ["unclear", { readings: true, proportion: false, ratio: false }],
  ["supplied", { readings: true, proportion: false, ratio: false }],
  ["deleted", { readings: true, proportion: false, ratio: false }],
  ["added", { readings: true, proportion: false, ratio: false }]
]);
var spanPattern = new RegExp(
  `^\\{(?:(\\d+)in(\\d+)|([A-Za-z]+)(?:[ \\t]+(?:(\\d+):(\\d+)|(\\d+)in(\\d+)))?)(${source.readings})?$`
);
var spanHeadOf = interned((text) => {
  const match = spanPattern.exec(text);
  if (match === null) return void 0;
  const [, n, m, word, long, short, wordN, wordM, onlyIn] = match;
  const readings2 = readingsOf(onlyIn);
  const proportion = n ?? wordN;
  return {
    text,
    ...spanWords.has(word) ? { word } : {},
    ...proportion === void 0 ? {} : { proportion: { n: Number(proportion), m: Number(m ?? wordM) } },
    ...long === void 0 ? {} : { ratio: { long: Number(long), short: Number(short) } },
    ...readings2 === void 0 ? {} : { readings: readings2 }
  };
});
var isPossibleProportion = (p) => possible(p.n) && possible(p.m);

// grammar/vocabulary/meters.ts
var meterSigns = {
  C: { beats: 4, beatValue: 4, describe: "common time: four crotchets" },
  "cut-C": { beats: 2, beatValue: 2, describe: "cut time: two minims" },
  O: { beats: 3, beatValue: 1, describe: "perfect time: three semibreves" },
  "2": { beats: 2, beatValue: 2, describe: "two quick minims" },
  "3": { beats: 3, beatValue: 4, describe: "three crotchets" },
  "3/2": { beats: 3, beatValue: 2, describe: "three slow minims" },
  "3/1": { beats: 3, beatValue: 1, describe: "three semibreves" },
  "3/4": { beats: 3, beatValue: 4, describe: "three crotchets" },
  "3/8": { beats: 3, beatValue: 8, describe: "three quavers" },
  "6/4": { beats: 6, beatValue: 4, describe: "six crotchets" },
  "6/8": { beats: 6, beatValue: 8, describe: "six quavers" },
  "9/8": { beats: 9, beatValue: 8, describe: "nine quavers" },
  "12/8": { beats: 12, beatValue: 8, describe: "twelve quavers" },
  "2/4": { beats: 2, beatValue: 4, describe: "two crotchets" },
  "4/8": { beats: 4, beatValue: 8, describe: "four quavers" }
};
var MOST_BEATS = 99;
var SMALLEST_BEAT = 128;
var possibleMeter = (n, d) => Number.isInteger(n) && n >= 1 && n <= MOST_BEATS && isBeatValue(d);
var isBeatValue = (d) => d >= 1 && d <= SMALLEST_BEAT && Number.isInteger(Math.log2(d));
var fraction = /^(\d{1,3})\/(\d{1,3})$/;
function meterOf(sign) {
  if (Object.hasOwn(meterSigns, sign)) return meterSigns[sign];
  const match = fraction.exec(sign);
  const [beats, beatValue] = [Number(match?.[1]), Number(match?.[2])];
  return possibleMeter(beats, beatValue) ? { beats, beatValue, describe: `${beats}/${beatValue}` } : void 0;
}

// grammar/vocabulary/names.ts
var plainName = /^[A-Za-z][A-Za-z0-9_]*$/;
var hyphenedName = /^[A-Za-z][A-Za-z0-9_-]*$/;
var layerName = /^[A-Za-z][A-Za-z0-9_]*\.[1-9][0-9]?$/;
var clefLike = /^[GCF][0-9]$/;
var hyphened = /* @__PURE__ */ new Set(["table", "temperament", "instrument"]);
function isName(text, role) {
  if (role === "layer") return layerName.test(text);
  if (role === "label") return plainName.test(text) || layerName.test(text);
  return (hyphened.has(role) ? hyphenedName : plainName).test(text);
}
var reserved = {
  voice: /* @__PURE__ */ new Set(["fig", "text"]),
  // The rest of a stave's words are clauses that follow a name or stand beside it in a head.
  stave: /* @__PURE__ */ new Set(["loose", "free", "key", "meter", "tempo", "at", "none", "lines", "stems"]),
  witness: /* @__PURE__ */ new Set(["written", "main", "sic", "corr", "omit"]),
  reading: /* @__PURE__ */ new Set(["written", "main", "sic", "corr", "omit"]),
  place: /* @__PURE__ */ new Set(["written", "main", "sic", "corr", "omit"])
};
var isReserved = (text, role) => reserved[role]?.has(text) ?? false;
var readsAsNoteOrClef = (text) => spellingOf(text) !== void 0 || clefLike.test(text);

// grammar/vocabulary/pitches.ts
var semitones = { c: 0, d: 2, e: 4, f: 5, g: 7, a: 9, b: 11 };
var alterations = { "#": 1, "##": 2, b: -1, bb: -2, n: 0 };
var semitonesOf = (pitch) => 12 * (pitch.octave ?? 0) + semitones[pitch.letter] + (pitch.accidental === void 0 ? 0 : alterations[pitch.accidental]);

// grammar/statements/readers.ts
var MOST_IN_RATIO2 = 99;
var span = ({ pos, len }) => ({ pos, len });
var isWord = (token2) => token2.kind === "word";
var startsAsName = (token2) => isWord(token2) && /^\p{L}/u.test(token2.text);
var replacing = (token2, text) => ({
  title: `write ${text}`,
  edits: [{ pos: token2.pos, len: token2.len, text }]
});
var notThat = (token2, part, report, fixes = []) => {
  report("wrong-argument", token2, { word: token2.text, expected: part.what }, fixes);
  return void 0;
};
function checkName(text, at, part, report) {
  const role = part.role ?? "place";
  if (role === "layer" && !isName(text, role)) report("wrong-argument", at, { word: text, expected: part.what });
  else if (!isName(text, role)) report("bad-name", at, { word: text, expected: part.what });
  else if (part.declares && isReserved(text, role)) report("reserved-name", at, { word: text, expected: part.what });
  else if (part.declares && role === "stave" && readsAsNoteOrClef(text)) report("stave-like-note", at, { word: text });
}
var isNoStave = (text) => readsAsNoteOrClef(text) || isReserved(text, "stave");
var nameReader = {
  accepts: (token2, part) => startsAsName(token2) && (part.declares === true || part.role !== "stave" || !isNoStave(token2.text)),
  read(token2, part, report) {
    checkName(token2.text, token2, part, report);
    return { kind: "name", text: token2.text, ...span(token2) };
  }
};
function listReader(separator) {
  return {
    accepts: startsAsName,
    read(token2, part, report) {
      const names2 = [];
      let pos = token2.pos;
      for (const text of token2.text.split(separator)) {
        const name3 = { text, pos, len: text.length };
        checkName(text, text === "" ? token2 : name3, part, report);
        names2.push(name3);
        pos += text.length + separator.length;
      }
      return { kind: "names", names: names2, ...span(token2) };
    }
  };
}
var stringReader = {
  accepts: (token2, part) => token2.kind === "string" || !part.optional && isWord(token2),
  read(token2, _part, report) {
    if (token2.kind !== "string") {
      const fix = { title: "put it in quotes", edits: [{ ...span(token2), text: `"${token2.text}"` }] };
      report("needs-quotes", token2, { word: token2.text }, [fix]);
    }
    return { kind: "string", text: token2.text, ...span(token2) };
  }
};
function numberReader(pattern) {
  return {
    accepts: (token2) => isWord(token2) && /^\d/.test(token2.text),
    read(token2, part, report) {
      if (!pattern.test(token2.text)) return notThat(token2, part, report);
      const value2 = Number(token2.text);
      const { low, high } = part.range ?? { low: 0, high: Number.MAX_SAFE_INTEGER };
      if (value2 < low || value2 > high) {
        report("number-out-of-range", token2, { word: token2.text, what: part.what, low, high });
        return void 0;
      }
      return { kind: "number", value: value2, text: token2.text, ...span(token2) };
    }
  };
}
var ratioPattern = /^([+-]?)(\d{1,9})([/:])(\d{1,9})$/;
var withinRatio = (n, d) => n >= 1 && d >= 1 && n <= MOST_IN_RATIO2 && d <= MOST_IN_RATIO2;
var looksLikeRatio = (token2) => isWord(token2) && /^[+-]?\d+[/:]\d+$/.test(token2.text);
function ratioReader(rule, outOfRange) {
  return {
    accepts: looksLikeRatio,
    read(token2, part, report) {
      const match = ratioPattern.exec(token2.text);
      const [, sign = "", first2 = "", separator, second = ""] = match ?? [];
      if (match === null) return notThat(token2, part, report);
      if (sign !== "" !== rule.signed) {
        const bare = token2.text.slice(sign.length);
        const meant = rule.signed ? [`-${bare}`, `+${bare}`] : [bare];
        return notThat(
          token2,
          part,
          report,
          meant.map((text) => replacing(token2, text))
        );
      }
      if (separator !== rule.separator) {
        const meant = `${sign}${first2}${rule.separator}${second}`;
        return notThat(token2, part, report, [replacing(token2, meant)]);
      }
      const [n, d] = [Number(first2), Number(second)];
      if (!rule.possible(n, d)) {
        report(outOfRange, token2, {
          word: token2.text,
          most: MOST_IN_RATIO2,
          smallest: SMALLEST_BEAT,
          beats: MOST_BEATS
        });
        return void 0;
      }
      return { kind: "ratio", sign, n, d, ...span(token2) };
    }
  };
}
var regionReader = {
  accepts: (token2) => isWord(token2) && /^\d/.test(token2.text),
  read(token2, part, report) {
    const numbers = token2.text.split(",");
    if (numbers.length !== 4 || !numbers.every((n) => /^\d{1,7}$/.test(n))) return notThat(token2, part, report);
    return { kind: "region", numbers: numbers.map(Number), ...span(token2) };
  }
};
var valueReader = {
  accepts: (token2) => isWord(token2) && valueFormOf(token2.text) !== void 0,
  read(token2, part, report) {
    const form = valueFormOf(token2.text);
    const plain = form?.duration !== void 0 && form.proportion === void 0 && !form.doubtful;
    return plain ? { kind: "value", form, ...span(token2) } : notThat(token2, part, report);
  }
};
function plainSpelling(text) {
  const spelling2 = spellingOf(text);
  const plain = spelling2?.editors === void 0 && spelling2?.cautionary === void 0 && !spelling2?.doubtful;
  return plain ? spelling2 : void 0;
}
function pitchReader(fits2) {
  return {
    accepts: (token2) => isWord(token2) && spellingOf(token2.text) !== void 0,
    read(token2, part, report) {
      const spelling2 = plainSpelling(token2.text);
      if (spelling2 === void 0 || !fits2(spelling2)) return notThat(token2, part, report);
      return { kind: "pitch", spelling: spelling2, ...span(token2) };
    }
  };
}
function pairReader(separator, fits2) {
  return {
    accepts: (token2) => isWord(token2) && /^[a-g][^-/]*[-/]/.test(token2.text),
    read(token2, part, report) {
      const [first2 = "", second = "", ...more] = token2.text.split(separator);
      const [low, high] = [plainSpelling(first2), plainSpelling(second)];
      if (low === void 0 || high === void 0 || more.length > 0 || !fits2(low, high)) {
        return notThat(token2, part, report);
      }
      return { kind: "pair", first: low, second: high, ...span(token2) };
    }
  };
}
var bothOctaves = (a, b) => a.octave !== void 0 && b.octave !== void 0;
var noOctaves = (a, b) => a.octave === void 0 && b.octave === void 0;
var modulo12 = (n) => (n % 12 + 12) % 12;
var FIFTH = 7;
var isCompass = (a, b) => bothOctaves(a, b) && semitonesOf(a) < semitonesOf(b);
var isFifth = (a, b) => (bothOctaves(a, b) || noOctaves(a, b)) && modulo12(semitonesOf(b) - semitonesOf(a)) === FIFTH;
var isOneKey = (a, b) => noOctaves(a, b) && a.letter !== b.letter && modulo12(semitonesOf(a)) === modulo12(semitonesOf(b));
var meterReader = {
  accepts: isWord,
  read(token2) {
    return { kind: "word", text: token2.text, ...span(token2) };
  }
};
var hasUsualLength = (sign) => meterOf(sign) !== void 0;
var clefReader = {
  accepts: (token2) => isWord(token2) && looksLikeClef(token2.text),
  read(token2, part, report) {
    const clefs = token2.text.split("+").map(clefOf);
    const [first2, second, ...more] = clefs;
    if (first2 === void 0 || clefs.includes(void 0) || more.length > 0) {
      const meant = clefMeant(token2.text);
      return notThat(token2, part, report, meant === void 0 ? [] : [replacing(token2, meant)]);
    }
    if (second !== void 0 && !clefsAgree(first2, second)) {
      const line = agreeingLine(second, first2);
      const meant = `${clefText(first2)}+${second.letter}${line}`;
      const fixes = line >= 1 && line <= MOST_LINES && line !== first2.line ? [replacing(token2, meant)] : [];
      report("clefs-disagree", token2, { first: clefText(first2), second: clefText(second) }, fixes);
    }
    return { kind: "clef", clefs: second === void 0 ? [first2] : [first2, second], ...span(token2) };
  }
};
var whole2 = /^\d{1,9}$/;
var decimal = /^\d{1,9}(?:\.\d{1,6})?$/;
var readers = {
  name: nameReader,
  names: listReader(","),
  shapes: listReader("+"),
  string: stringReader,
  whole: numberReader(whole2),
  decimal: numberReader(decimal),
  value: valueReader,
  pitch: pitchReader((pitch) => pitch.octave !== void 0),
  keySign: pitchReader((pitch) => pitch.accidental !== void 0),
  pitchOfA: pitchReader((pitch) => pitch.text === "a4"),
  meter: meterReader,
  barLength: ratioReader({ separator: "/", signed: false, possible: possibleMeter }, "bar-out-of-range"),
  shares: ratioReader({ separator: ":", signed: false, possible: withinRatio }, "ratio-out-of-range"),
  commaPart: ratioReader({ separator: "/", signed: false, possible: withinRatio }, "ratio-out-of-range"),
  tempering: ratioReader({ separator: "/", signed: true, possible: withinRatio }, "ratio-out-of-range"),
  clef: clefReader,
  region: regionReader,
  compass: pairReader("-", isCompass),
  fifth: pairReader("-", isFifth),
  splitKey: pairReader("/", isOneKey)
};

// grammar/statements/recipe.ts
var stepPattern = /^([+-]?)(\d{1,2})(##|#|bb|b|n)?$/;
var sharePattern = /^(\d{1,3})\/(\d{1,3})$/;
var numberPattern = /^\d{1,3}(?:\.\d{1,3})?$/;
var FARTHEST_STEP = 7;
var SMALLEST_SHARE = 99;
var MOST_NOTES = 64;
var stretch = (first2, last2) => ({ pos: first2.pos, len: last2.pos + last2.len - first2.pos });
var inserting = (title, pos, text) => ({ title, edits: [{ pos, len: 0, text }] });
function parted(tokens, report) {
  return tokens.flatMap((token2) => {
    if (token2.kind !== "word" || !token2.text.includes(",")) return [token2];
    const spaced2 = token2.text.split(",").join(", ");
    report("recipe-comma", token2, { word: token2.text }, [replacing(token2, spaced2)]);
    let pos = token2.pos;
    return token2.text.split(/(,)/).map((text) => {
      const piece = { ...token2, kind: text === "," ? "," : "word", text, pos, len: text.length };
      pos += text.length;
      return piece;
    });
  });
}
var RecipeReader = class {
  constructor(tokens, colon, report, taken) {
    this.tokens = tokens;
    this.colon = colon;
    this.report = report;
    this.taken = taken;
  }
  tokens;
  colon;
  report;
  taken;
  index = 0;
  start;
  unresolved;
  extended;
  phrases = [];
  /** Which phrases last to the end of the note. */
  endless = /* @__PURE__ */ new Set();
  /** Reads phrase by phrase; what is not understood is passed over to the next comma. */
  read() {
    while (this.peek() !== void 0) {
      this.phrase();
      this.endPhrase();
    }
    this.judge();
    const last2 = this.tokens.at(-1) ?? this.colon;
    return {
      ...this.start === void 0 ? {} : { start: this.start },
      ...this.unresolved === void 0 ? {} : { unresolved: this.unresolved },
      ...this.extended === void 0 ? {} : { extends: this.extended },
      phrases: this.phrases,
      ...stretch(this.tokens[0] ?? this.colon, last2)
    };
  }
  // ── tokens ──
  peek(ahead = 0) {
    return this.tokens[this.index + ahead];
  }
  get last() {
    return this.tokens[this.index - 1] ?? this.colon;
  }
  isNext(text, ahead = 0) {
    const token2 = this.peek(ahead);
    return token2 !== void 0 && token2.kind !== "string" && token2.text === text;
  }
  accept(text) {
    if (!this.isNext(text)) return false;
    this.index++;
    return true;
  }
  /** The same of a word with a slip in it, which is reported. */
  acceptNearly(text) {
    if (this.accept(text)) return true;
    const token2 = this.peek();
    if (token2?.kind !== "word" || nearest(token2.text, [text]) === void 0) return false;
    this.index++;
    this.report("recipe-word", token2, { word: token2.text, expected: `\`${text}\`` }, [replacing(token2, text)]);
    return true;
  }
  acceptWord() {
    const token2 = this.peek();
    if (token2?.kind !== "word") return void 0;
    this.index++;
    return token2;
  }
  // ── phrases ──
  heads = {
    on: () => this.beginning("on beat"),
    before: () => this.beginning("before beat"),
    extends: () => this.extension(),
    unresolved: () => this.reason(),
    hold: () => this.lasting("hold"),
    rest: () => this.lasting("rest")
  };
  beginsPhrase(token2) {
    if (token2 === void 0) return false;
    return token2.kind === "(" || token2.kind === "word" && (Object.hasOwn(this.heads, token2.text) || stepPattern.test(token2.text));
  }
  phrase() {
    const token2 = this.peek();
    if (token2?.kind === "word" && Object.hasOwn(this.heads, token2.text)) this.heads[token2.text]?.();
    else if (this.beginsPhrase(token2)) this.steps();
  }
  /** After a phrase stands a comma; where it was forgotten the next phrase begins, anything else is passed over. */
  endPhrase() {
    if (this.last.kind === "(") this.missing("steps such as +1 0");
    const token2 = this.peek();
    if (token2 === void 0 || this.accept(",")) return;
    if (this.last.kind === "(") this.skip();
    else if (this.beginsPhrase(token2) && this.last !== this.colon && this.last.kind !== ",") {
      const fix = inserting("put a comma between the phrases", this.last.pos + this.last.len, ",");
      this.report("recipe-comma", token2, { word: token2.text }, [fix]);
    } else {
      this.strange(token2);
      this.skip();
    }
  }
  /** Passes over the rest of a phrase. */
  skip() {
    while (this.peek() !== void 0 && !this.isNext(",")) this.index++;
    this.accept(",");
  }
  strange(token2) {
    const meant = nearest(token2.text, [...Object.keys(this.heads), "repeated", "for", "at", "beat", "second", "pulse"]);
    const fixes = meant === void 0 ? [] : [replacing(token2, meant)];
    this.report(
      "recipe-word",
      token2,
      { word: token2.text, expected: meant === void 0 ? "steps such as 0 +1 -1, `hold` or `rest`" : `\`${meant}\`` },
      fixes
    );
  }
  missing(expected) {
    this.report("missing-argument", this.last, { where: this.last.text, expected });
  }
  beginning(start) {
    const head2 = this.acceptWord();
    if (head2 === void 0) return;
    if (!this.acceptNearly("beat")) this.missing("`beat`");
    if (this.start !== void 0 || this.phrases.length > 0) this.report("recipe-start-first", head2, { word: start });
    this.start ??= start;
    this.taken(start);
  }
  extension() {
    const head2 = this.acceptWord();
    const row3 = this.acceptWord();
    if (head2 === void 0 || row3 === void 0) {
      this.missing("the sign whose row comes first");
      return;
    }
    if (this.phrases.length > 0 || this.extended !== void 0) this.report("recipe-extends-first", head2, {});
    this.extended ??= row3.text;
    this.taken("extends");
  }
  reason() {
    this.index++;
    const reason = this.peek();
    if (reason?.kind !== "string") {
      this.unresolved ??= "";
      this.missing("the reason in quotes");
      return;
    }
    this.index++;
    this.unresolved ??= reason.text;
    this.taken("unresolved");
  }
  lasting(kind) {
    const head2 = this.acceptWord();
    if (head2 === void 0) return;
    const limited = sharePattern.test(this.peek()?.text ?? "");
    const share = limited ? this.share() : void 0;
    this.taken(kind);
    this.push(head2, { kind, steps: [], repeated: false, ...share === void 0 ? {} : { share } });
    if (!limited) this.endless.add(this.phrases.length - 1);
  }
  push(first2, phrase) {
    this.phrases.push({ ...phrase, ...stretch(first2, this.last) });
  }
  // ── steps ──
  steps() {
    const first2 = this.peek() ?? this.colon;
    const bracketed = this.accept("(");
    const steps = this.stepRun();
    if (steps.length === 0 && bracketed) return;
    const repeated = bracketed ? this.closeRepeated(first2) : this.unbracketed(first2);
    if (repeated) this.taken("repeated");
    let [share, speed] = [void 0, void 0];
    for (; ; ) {
      if (share === void 0 && this.accept("for")) share = this.shareAfterFor();
      else if (speed === void 0 && this.accept("at")) speed = this.speed();
      else break;
    }
    if (steps.length > 0)
      this.push(first2, {
        kind: "steps",
        steps,
        repeated,
        ...share === void 0 ? {} : { share },
        ...speed === void 0 ? {} : { speed }
      });
  }
  stepRun() {
    const steps = [];
    for (let token2 = this.peek(); token2?.kind === "word" && stepPattern.test(token2.text); token2 = this.peek()) {
      this.index++;
      const step = this.step(token2);
      if (step !== void 0) steps.push(step);
    }
    return steps;
  }
  step(token2) {
    const [, sign = "", digits = "", accidental2] = stepPattern.exec(token2.text) ?? [];
    const size = Number(digits);
    if (size > FARTHEST_STEP) {
      const range = { what: "a step", low: -FARTHEST_STEP, high: FARTHEST_STEP };
      this.report("number-out-of-range", token2, { word: token2.text, ...range });
      return void 0;
    }
    if (sign === "" && size > 0) {
      this.report("step-without-sign", token2, { word: token2.text }, [replacing(token2, `+${token2.text}`)]);
    }
    this.taken("step");
    return {
      step: size === 0 ? 0 : sign === "-" ? -size : size,
      ...accidental2 === void 0 ? {} : { accidental: accidental2 },
      pos: token2.pos,
      len: token2.len
    };
  }
  /** `)` and `repeated`; brackets around steps mean nothing else. */
  closeRepeated(opening) {
    if (!this.accept(")")) {
      const fix = inserting("close the bracket", this.last.pos + this.last.len, ")");
      this.report("recipe-bracket", opening, {}, [fix]);
    }
    if (!this.acceptNearly("repeated")) {
      const fix = inserting("add `repeated`", this.last.pos + this.last.len, " repeated");
      this.report("missing-argument", this.last, { where: "( \u2026 )", expected: "`repeated`" }, [fix]);
    }
    return true;
  }
  unbracketed(first2) {
    const end = this.last.pos + this.last.len;
    if (!this.isNext("repeated")) return false;
    const edits = [
      { pos: first2.pos, len: 0, text: "(" },
      { pos: end, len: 0, text: ")" }
    ];
    this.report("recipe-bracket", stretch(first2, this.last), {}, [{ title: "put the steps in brackets", edits }]);
    this.index++;
    return true;
  }
  // ── shares and speeds ──
  shareAfterFor() {
    this.taken("for");
    if (sharePattern.test(this.peek()?.text ?? "")) return this.share();
    this.missing("a share of the value, such as 1/2");
    return void 0;
  }
  share() {
    const token2 = this.acceptWord();
    const match = sharePattern.exec(token2?.text ?? "");
    const [n, d] = [Number(match?.[1]), Number(match?.[2])];
    if (token2 !== void 0 && n >= 1 && n <= d && d <= SMALLEST_SHARE) return { n, d };
    if (token2 !== void 0) this.report("share-out-of-range", token2, { word: token2.text });
    return void 0;
  }
  speed() {
    const token2 = this.peek();
    if (token2?.kind !== "word" || !numberPattern.test(token2.text)) {
      this.missing("a speed: 11 a second, 8 a pulse, or a note value");
      return void 0;
    }
    this.index++;
    const number = Number(token2.text);
    if (this.accept("a")) return this.rate(token2, number);
    this.taken("value");
    if (isBeatValue(number)) return { kind: "value", number };
    this.report("wrong-argument", token2, { word: token2.text, expected: "a note value such as 32" });
    return void 0;
  }
  rate(token2, number) {
    const unit = this.peek();
    const kind = ["second", "pulse"].find((word) => this.acceptNearly(word));
    if (kind === void 0) {
      if (unit === void 0 || unit.kind === ",") this.missing("`second` or `pulse`");
      return void 0;
    }
    this.taken(`a ${kind}`);
    if (number >= 1 && number <= MOST_NOTES) return { kind, number };
    const range = { what: "the number of notes", low: 1, high: MOST_NOTES };
    this.report("number-out-of-range", token2, { word: token2.text, ...range });
    return void 0;
  }
  // ── the whole ──
  judge() {
    if (this.unresolved !== void 0) {
      if (this.phrases.length > 0) this.report("recipe-unresolved-alone", this.phrases[0] ?? this.colon, {});
      return;
    }
    const [first2] = this.phrases;
    if (first2 === void 0) {
      if (this.extended === void 0) this.missing("a recipe, such as `on beat, 0 -1 0, hold`");
      return;
    }
    if (this.start === void 0 && this.extended === void 0) {
      this.report("recipe-start-missing", first2, {}, [inserting("begin on the beat", first2.pos, "on beat, ")]);
    }
    this.phrases.slice(0, -1).forEach((phrase, i) => {
      if (this.endless.has(i)) this.report("recipe-ended", phrase, { word: phrase.kind });
    });
  }
};
var readRecipe = (tokens, colon, report, taken) => new RecipeReader(parted(tokens, report), colon, report, taken).read();

// grammar/statements/parser.ts
var listed = (all) => all.length < 2 ? all[0] ?? "" : `${all.slice(0, -1).join(", ")} or ${all.at(-1)}`;
var quoted = (all) => listed([...all].map((word) => `\`${word}\``));
var bareBeginnings = { ":": "`:`", clef: "a clef", staveAndClef: "a stave's name with its clef" };
var beginning = ([name3, clause]) => clause.opens === void 0 ? `\`${name3}\`` : bareBeginnings[clause.opens];
var isSign = (text) => !/^[a-z]/.test(text);
function lineEnds(tokens) {
  const ends = [];
  for (let i = tokens.length - 1; i >= 0; i--) {
    ends[i] = tokens[i]?.line === tokens[i + 1]?.line ? ends[i + 1] ?? i + 1 : i + 1;
  }
  return ends;
}
var StatementReader = class {
  constructor(text, onTaken) {
    this.text = text;
    this.onTaken = onTaken;
    const { tokens, problems } = lex(text);
    this.tokens = tokens;
    this.ends = lineEnds(tokens);
    this.problems = problems;
    this.limit = tokens.length;
  }
  text;
  onTaken;
  problems;
  tokens;
  ends;
  index = 0;
  /** Reading stops before the token of this index: the end of a line, or of the text. */
  limit;
  /** What is read now counts as no use of the vocabulary. */
  silent = false;
  // ── tokens ──
  peek(ahead = 0) {
    return this.index + ahead < this.limit ? this.tokens[this.index + ahead] : void 0;
  }
  next() {
    const token2 = this.peek();
    if (token2 !== void 0) this.index++;
    return token2;
  }
  get last() {
    return this.tokens[this.index - 1];
  }
  /** Leaves out what closes a change. */
  dropLast(kind) {
    if (this.tokens[this.limit - 1]?.kind !== kind) return false;
    this.limit--;
    return true;
  }
  report = (code, at, slots, fixes) => {
    this.problems.push({
      code,
      slots,
      pos: at.pos,
      len: at.len,
      ...fixes === void 0 || fixes.length === 0 ? {} : { fixes }
    });
  };
  taken(path) {
    if (!this.silent) this.onTaken?.(path);
  }
  unheard(read) {
    const before = this.silent;
    this.silent = true;
    read();
    this.silent = before;
  }
  isNext(text, ahead = 0) {
    const token2 = this.peek(ahead);
    return token2 !== void 0 && token2.kind !== "string" && token2.text === text;
  }
  spanFrom(first2) {
    const last2 = this.last ?? first2;
    return { pos: first2.pos, len: Math.max(last2.pos + last2.len - first2.pos, 0) };
  }
  /** Does what it is told within the line that is being read. */
  withinLine(read) {
    const outer = this.limit;
    this.limit = Math.min(outer, this.ends[this.index] ?? outer);
    const result = read();
    this.limit = outer;
    return result;
  }
  // ── what begins here ──
  /** The name of the clause that begins at the next token. */
  clauseHere(scope) {
    const token2 = this.peek();
    if (token2 === void 0 || token2.kind === "string") return void 0;
    const named = lookUp(scope.clauses, token2.text);
    if (token2.kind === "word" && named !== void 0 && named.opens === void 0) return token2.text;
    for (const [name3, clause] of Object.entries(scope.clauses)) if (this.opens(clause, token2)) return name3;
    return void 0;
  }
  opens(clause, token2) {
    if (clause.opens === void 0) return false;
    if (clause.opens === ":") return token2.kind === ":";
    if (token2.kind !== "word") return false;
    if (looksLikeClef(token2.text)) return true;
    if (clause.opens === "clef") return false;
    const clef = this.peek(1);
    return clef?.kind === "word" && clef.line === token2.line && looksLikeClef(clef.text) && /^[A-Za-z]/.test(token2.text);
  }
  rowHere(scope) {
    const token2 = this.peek();
    if (scope.rows === void 0 || token2 === void 0) return false;
    if (scope.rows.word !== void 0) return token2.kind === "word" && token2.text === scope.rows.word;
    return token2.line !== this.last?.line && token2.line > 0;
  }
  endsHere(scope) {
    return this.peek() === void 0 || this.clauseHere(scope) !== void 0 || this.rowHere(scope);
  }
  // ── parts ──
  parts(parts, scope, path) {
    return parts.flatMap((part, i) => this.part(part, parts.slice(i + 1), scope, path));
  }
  part(part, later, scope, path) {
    const lead = [];
    if (part.after !== void 0) {
      const found = this.lead(part, part.after, scope);
      if (found === void 0) return [];
      if (part.optional && !isSign(part.after)) lead.push({ kind: "word", text: part.after, ...found });
    }
    const wanted = !part.optional || part.after !== void 0;
    if (!this.accepts(part, scope)) {
      if (this.misspelt(part, later, scope)) return [];
      if (wanted) this.wanting(part, later, scope);
      return lead;
    }
    const args = [...lead];
    do
      args.push(...this.takePart(part, scope, path));
    while (part.repeat && this.accepts(part, scope));
    return args;
  }
  /** The word or sign before a part; undefined where the part is left out. */
  lead(part, after, scope) {
    const token2 = this.peek();
    if (token2 !== void 0 && this.isNext(after)) {
      this.index++;
      return { pos: token2.pos, len: token2.len };
    }
    if (part.optional) return void 0;
    const here = token2 ?? this.last ?? { pos: 0, len: 0 };
    if (this.accepts(part, scope)) {
      const fix = { title: `put \`${after}\` before it`, edits: [{ pos: here.pos, len: 0, text: `${after} ` }] };
      this.report("missing-word", here, { word: after, before: token2?.text ?? "" }, [fix]);
      return { pos: here.pos, len: 0 };
    }
    if (token2 !== void 0 && !this.endsHere(scope) && this.acceptsAfterNext(part, scope)) {
      this.report("unknown-word", token2, { word: token2.text, expected: `\`${after}\`` }, [replacing(token2, after)]);
      this.index++;
      return { pos: token2.pos, len: token2.len };
    }
    this.missing(scope, `\`${after}\` and ${part.what}`);
    return void 0;
  }
  acceptsAfterNext(part, scope) {
    this.index++;
    const accepted = this.accepts(part, scope);
    this.index--;
    return accepted;
  }
  /** Whether the next token is meant for this part, well written or not. */
  accepts(part, scope) {
    const token2 = this.peek();
    if (token2 === void 0 || this.endsHere(scope)) return false;
    if (part.kind === "free") return readers[part.take].accepts(token2, part);
    if (part.kind === "words") return this.matching(part) !== void 0;
    return this.formHere(part, scope) !== void 0;
  }
  formHere(part, scope) {
    return part.forms.find(([first2]) => first2 !== void 0 && this.accepts(first2, scope));
  }
  /** The word of a list that stands here and how many tokens it is. */
  matching(part) {
    const token2 = this.peek();
    if (token2?.kind !== "word") return void 0;
    if (Object.hasOwn(part.words, token2.text)) return { word: token2.text, count: 1 };
    for (const word of Object.keys(part.words)) {
      const pieces = word.split(" ");
      if (pieces.length > 1 && pieces.every((piece, i) => this.isNext(piece, i))) return { word, count: pieces.length };
    }
    return void 0;
  }
  takePart(part, scope, path) {
    if (part.kind === "free") return this.takeFree(part, scope, path);
    if (part.kind === "words") return this.takeWord(part, scope, path);
    return this.parts(this.formHere(part, scope) ?? [], scope, path);
  }
  takeWord(part, scope, path) {
    const first2 = this.peek();
    const match = this.matching(part);
    if (first2 === void 0 || match === void 0) return [];
    this.index += match.count;
    const wordPath = `${path}/${match.word}`;
    this.taken(wordPath);
    const arg = { kind: "word", text: match.word, ...this.spanFrom(first2) };
    const inner = { ...scope, label: `${scope.label} ${match.word}` };
    return [arg, ...this.parts(part.words[match.word]?.follow ?? [], inner, wordPath)];
  }
  takeFree(part, scope, path) {
    const tokens = this.listed(part, scope);
    const read = tokens.map((token2) => readers[part.take].read(token2, part, this.report));
    this.taken(`${path}/${part.id}`);
    const args = read.filter((arg) => arg !== void 0);
    const [first2] = args;
    if (args.length < 2 || first2?.kind !== "names") return args;
    const names2 = args.flatMap((arg) => arg.kind === "names" ? arg.names : []);
    return [{ kind: "names", names: names2, ...this.spanFrom(first2) }];
  }
  /** The token of a part; of a list that was typed with spaces, all its members. */
  listed(part, scope) {
    const first2 = this.next();
    if (first2 === void 0) return [];
    if (part.take === "string" && first2.kind === "word") return [this.unquoted(first2, scope)];
    if (part.take !== "names" && part.take !== "region" || !this.isNext(",")) return [first2];
    const members = [first2];
    while (this.isNext(",")) {
      this.index++;
      if (this.peek()?.kind === "word") members.push(this.next() ?? first2);
    }
    const joined = { ...first2, text: members.map((m) => m.text).join(","), ...this.spanFrom(first2) };
    this.report("space-in-list", joined, {}, [replacing(joined, joined.text)]);
    return part.take === "region" ? [joined] : members;
  }
  /** Words that should be a string are taken together to the next clause or line. */
  unquoted(first2, scope) {
    for (let token2 = this.peek(); token2 !== void 0 && token2.line === first2.line; token2 = this.peek()) {
      if (token2.kind === "string" || this.endsHere(scope)) break;
      this.index++;
    }
    const { pos, len } = this.spanFrom(first2);
    return { ...first2, text: this.text.slice(pos, pos + len), len };
  }
  // ── what is missing or strange ──
  missing(scope, expected) {
    this.report("missing-argument", this.last ?? { pos: 0, len: 0 }, { where: scope.label, expected });
  }
  isMeantFor(parts, scope) {
    return parts.some((part) => part.after === void 0 ? this.accepts(part, scope) : this.isNext(part.after));
  }
  /** Takes a word that is nearly one of a list, unless it is meant for a later part. */
  misspelt(part, later, scope) {
    const token2 = this.peek();
    if (part.kind !== "words" || token2?.kind !== "word" || this.endsHere(scope)) return false;
    if (this.isMeantFor(later, scope)) return false;
    const meant = nearest(token2.text, Object.keys(part.words));
    if (meant === void 0) return false;
    this.report("unknown-word", token2, { word: token2.text, expected: `\`${meant}\`` }, [replacing(token2, meant)]);
    this.index++;
    this.unheard(() => this.parts(part.words[meant]?.follow ?? [], scope, ""));
    return true;
  }
  /** Reports a part that must stand here: missing, or something else in its place. */
  wanting(part, later, scope) {
    const token2 = this.peek();
    const elsewhere = this.isMeantFor(later, scope);
    const expected = part.kind === "words" ? `${part.what}: ${quoted(Object.keys(part.words))}` : part.what;
    if (token2 === void 0 || elsewhere || this.endsHere(scope) || token2.kind === ":") this.missing(scope, expected);
    else {
      this.index++;
      const code = part.kind === "words" ? "unknown-word" : "wrong-argument";
      this.report(code, token2, { word: token2.text, expected });
    }
  }
  /** Passes over what belongs to nothing, as one finding, to the next clause, row or line. */
  strange(scope, stops = () => false) {
    const first2 = this.next();
    if (first2 === void 0) return;
    const last2 = () => {
      const token2 = this.peek();
      return token2 !== void 0 && token2.line === first2.line && !this.endsHere(scope) && !stops(token2) ? this.next() : void 0;
    };
    while (last2() !== void 0) ;
    const clauses2 = Object.entries(scope.clauses);
    const keywords = clauses2.filter(([, clause]) => clause.opens === void 0).map(([name3]) => name3);
    const meant = first2.kind === "word" ? nearest(first2.text, keywords) : void 0;
    const expected = meant === void 0 ? listed(clauses2.map(beginning)) : `\`${meant}\``;
    const slots = { word: first2.text, where: scope.label, expected };
    if (clauses2.length === 0) this.report("too-much", this.spanFrom(first2), slots);
    else this.report("unknown-clause", first2, slots, meant === void 0 ? [] : [replacing(first2, meant)]);
  }
  // ── clauses and rows ──
  clause(name3, entry, scope, seen) {
    const first2 = this.peek() ?? this.last ?? { pos: 0, len: 0 };
    if (!entry.repeats && seen.has(name3)) {
      this.report("repeated-clause", first2, { word: name3, where: scope.label });
    }
    seen.add(name3);
    const path = `${scope.path}/${name3}`;
    this.taken(path);
    if (entry.opens === void 0 || entry.opens === ":") this.index++;
    const inner = entry.opens === void 0 ? { ...scope, label: `${scope.label} \u2026 ${name3}` } : { label: scope.label, path, clauses: {} };
    const args = this.withinLine(() => this.parts(entry.parts, inner, path));
    this.checkMeter(name3, args);
    return { name: name3, args, ...this.spanFrom(first2) };
  }
  checkMeter(name3, args) {
    const [sign, length] = args;
    if (name3 !== "meter" || sign?.kind !== "word" || length !== void 0 || hasUsualLength(sign.text)) return;
    this.report("unknown-meter", sign, { word: sign.text });
  }
  /** All clauses and rows to the end of what is read; `stops` ends them earlier. */
  body(scope, stops = () => false) {
    const clauses2 = [];
    const rows = [];
    const seen = /* @__PURE__ */ new Set();
    for (let token2 = this.peek(); token2 !== void 0 && !stops(token2); token2 = this.peek()) {
      const name3 = this.clauseHere(scope);
      const entry = name3 === void 0 ? void 0 : lookUp(scope.clauses, name3);
      if (name3 !== void 0 && entry !== void 0) clauses2.push(this.clause(name3, entry, scope, seen));
      else if (scope.rows !== void 0 && this.rowHere(scope)) rows.push(this.row(scope.rows, scope));
      else this.strange(scope, stops);
    }
    return { clauses: clauses2, rows };
  }
  row(entry, outer) {
    return this.withinLine(() => {
      const first2 = this.peek() ?? { pos: 0, len: 0 };
      const path = `${outer.path}/${entry.kind}`;
      this.taken(path);
      if (entry.word !== void 0) this.index++;
      const scope = { label: entry.word ?? `${outer.label} row`, path, clauses: entry.clauses };
      const args = this.parts(entry.parts, scope, path);
      const stops = (token2) => entry.recipe === true && token2.kind === ":";
      const { clauses: clauses2 } = this.body(scope, stops);
      const recipe2 = entry.recipe ? this.recipe(scope) : void 0;
      return {
        kind: entry.kind,
        args,
        clauses: clauses2,
        ...recipe2 === void 0 ? {} : { recipe: recipe2 },
        ...this.spanFrom(first2)
      };
    });
  }
  recipe(scope) {
    const colon = this.next();
    if (colon === void 0) {
      this.missing(scope, "`:` and a recipe");
      return void 0;
    }
    const tokens = this.tokens.slice(this.index, this.limit);
    this.index = this.limit;
    return readRecipe(tokens, colon, this.report, (form) => this.taken(`${scope.path}/recipe/${form}`));
  }
  /** A whole entry after its keyword. */
  entry(scope, parts) {
    this.taken(scope.path);
    const args = scope.rows === void 0 ? this.parts(parts, scope, scope.path) : this.withinKeywordLine(() => this.parts(parts, scope, scope.path));
    return { args, ...this.body(scope) };
  }
  withinKeywordLine(read) {
    const onLine = this.peek()?.line === this.last?.line;
    const outer = this.limit;
    if (!onLine) this.limit = this.index;
    const result = onLine ? this.withinLine(read) : read();
    this.limit = outer;
    return result;
  }
};
var byPlace = (a, b) => a.pos - b.pos;
function parseStatement(text, joints, onTaken) {
  const reader = new StatementReader(text, onTaken);
  const keyword = reader.next();
  const entry = keyword?.kind === "word" ? lookUp(statements, keyword.text) : void 0;
  if (keyword !== void 0 && entry === void 0) {
    const meant = nearest(keyword.text, Object.keys(statements));
    const expected = meant === void 0 ? "a keyword such as `stave`, `voice` or `system`" : `\`${meant}\``;
    const fixes = meant === void 0 ? [] : [replacing(keyword, meant)];
    reader.report("unknown-statement", keyword, { word: keyword.text, expected }, fixes);
  }
  const word = keyword?.text ?? "";
  const read = entry === void 0 ? { args: [], clauses: [], rows: [] } : reader.entry({ label: word, path: word, clauses: entry.clauses, rows: entry.rows }, entry.parts);
  const statement = { kind: "statement", keyword: word, ...read, pos: 0, len: text.length };
  return { text, joints, statement, problems: reader.problems.sort(byPlace) };
}
function readChange(text, onTaken) {
  const reader = new StatementReader(text, onTaken);
  if (reader.peek()?.kind === "(") reader.next();
  reader.dropLast(")");
  const first2 = reader.next();
  const entry = first2?.kind === "word" ? lookUp(changes, first2.text) : void 0;
  if (first2 === void 0 || entry === void 0) {
    const meant = first2 === void 0 ? void 0 : nearest(first2.text, [...Object.keys(changes), "above", "below"]);
    const expected = meant === void 0 ? quoted(Object.keys(changes)) : `\`${meant}\``;
    const fixes = first2 === void 0 || meant === void 0 ? [] : [replacing(first2, meant)];
    reader.report(
      "unknown-change",
      first2 ?? { pos: 0, len: text.length },
      { word: first2?.text ?? "", expected },
      fixes
    );
    return { change: void 0, problems: reader.problems };
  }
  const scope = { label: first2.text, path: `(${first2.text})`, clauses: entry.clauses };
  const { args, clauses: clauses2 } = reader.entry(scope, entry.parts);
  if (first2.text === "now" && clauses2.length === 0 && reader.problems.length === 0) {
    reader.report("missing-argument", first2, { where: "now", expected: "a clef, `key`, `meter` or `tempo`" });
  }
  return {
    change: { text, word: first2.text, clauses: clauses2, args },
    problems: reader.problems.sort(byPlace)
  };
}
var KEPT2 = 4096;
var kept = /* @__PURE__ */ new Map();
function parseChange(text, onTaken) {
  const known = onTaken === void 0 ? kept.get(text) : void 0;
  if (known !== void 0) return known;
  const read = readChange(text, onTaken);
  if (onTaken !== void 0) return read;
  const oldest = kept.size >= KEPT2 ? kept.keys().next().value : void 0;
  if (oldest !== void 0) kept.delete(oldest);
  kept.set(text, read);
  return read;
}

// grammar/lanes/problems.ts
var MOST_PROBLEMS = 1e3;
var ProblemList = class {
  kept = [];
  firstLeftOut;
  leftOut = 0;
  push(problem) {
    if (this.kept.length < MOST_PROBLEMS) {
      this.kept.push(problem);
      return;
    }
    this.firstLeftOut ??= problem;
    this.leftOut++;
  }
  /** What was kept, and one problem more that tells how many were not. */
  all() {
    if (this.firstLeftOut === void 0) return this.kept;
    const { pos, len } = this.firstLeftOut;
    return [...this.kept, { code: "and-more", pos, len, slots: { count: this.leftOut, where: "lane" } }];
  }
};

// grammar/lanes/slips.ts
var spaced = (text) => ({ title: "put white space between", text });
var deadKeys = /[áéíóúýćńśźĺŕçÁÉÍÓÚ]/;
var undead = (text) => text.replace(/[áéíóúýćńśźĺŕçÁÉÍÓÚ]/g, (letter) => `'${letter.normalize("NFD").charAt(0)}`);
var apart = (text) => (text.match(/[a-gr][#n]*\d?/g) ?? [text]).join(" ");
var suffix = `(?:${source.mark}|${source.annotation})`;
var outOfOrder = new RegExp(
  `^(?:[a-g](?:${source.accidental})?(?:${source.drawn}|\\d|\\?|${source.tie}|${suffix}){2,6}|${suffix}{1,6}${source.tie}${suffix}{0,6})$`
);
var partPattern = new RegExp(`(${source.drawn})|(\\d)|(${source.tie})|(\\?)|(${suffix})`, "gy");
var whichPart = ["drawn", "octave", "tie", "doubt", "suffix"];
function inOrder(text) {
  const head2 = new RegExp(`^(?:[a-g](?:${source.accidental})?)?`).exec(text)?.[0] ?? "";
  const parts = { drawn: "", octave: "", doubt: "", tie: "", suffix: "" };
  for (const match of text.slice(head2.length).matchAll(partPattern)) {
    const which = whichPart[match.slice(1).findIndex((part) => part !== void 0)] ?? "suffix";
    if (which !== "suffix" && parts[which] !== "") return void 0;
    parts[which] += match[0];
  }
  const { drawn: drawn3, octave, doubt, tie: tie2, suffix: suffixes2 } = parts;
  const mended = `${head2}${drawn3}${octave}${doubt}${tie2}${suffixes2}`;
  return mended === text ? void 0 : mended;
}
var slips2 = [
  {
    pattern: /[’‘´`]/,
    code: "typographic-apostrophe",
    mend: (text) => ({ title: "write '", text: text.replace(/[’‘´`]/g, "'") })
  },
  {
    pattern: deadKeys,
    code: "dead-key",
    mend: (text) => ({ title: `write ${undead(text)}`, text: undead(text) })
  },
  // Its fix needs to know what stands before it.
  { pattern: /^\.$/, code: "lone-dot" },
  { pattern: /^\($/, code: "unclosed-bracket", slots: { bracket: "(", closing: ")" } },
  { pattern: /^\)$/, code: "stray-bracket", slots: { bracket: ")" } },
  {
    pattern: /^[a-g]\d(?:##|#|bb|b|n|\[(?:##|#|bb|b|n)\]|\((?:##|#|bb|b|n)\)?)/,
    code: "accidental-after-octave",
    mend: (text) => {
      const match = /^([a-g])(\d)(##|#|bb|b|n|\[(?:##|#|bb|b|n)\]|\((?:##|#|bb|b|n)\))(.*)$/.exec(text);
      const mended = match === null ? void 0 : `${match[1]}${match[3]}${match[2]}${match[4]}`;
      return mended === void 0 ? void 0 : { title: `write ${mended}`, text: mended };
    }
  },
  {
    pattern: new RegExp(`^(?:Mx|L|B|\\d+\\.*)(?:${source.spelling}|r|_+)`),
    code: "value-glued",
    mend: (text) => spaced(text.replace(/^(Mx|L|B|\d+\.*)/, "$1 "))
  },
  {
    pattern: new RegExp(`^${source.spelling}/\\d+`),
    code: "note-and-value",
    mend: (text) => {
      const match = /^([^/]*)\/(\d+\.*)(.*)$/.exec(text);
      return match === null ? void 0 : spaced(`${match[2]} ${match[1]}${match[3]}`);
    }
  },
  {
    pattern: /^[&,]+(?:[a-gr_=\d].*)?$/,
    code: "beam-glued",
    mend: (text) => spaced(text.replace(/^([&,])(.*)$/, " $1 $2"))
  },
  {
    pattern: /^(?:[a-g](?:##|#|n)?\d?|r){2,12}$/,
    code: "notes-run-together",
    mend: (text) => spaced(apart(text))
  },
  {
    pattern: { test: (text) => outOfOrder.test(text) && inOrder(text) !== void 0 },
    code: "note-order",
    mend: (text) => {
      const mended = inOrder(text);
      return mended === void 0 ? void 0 : { title: `write ${mended}`, text: mended };
    }
  },
  {
    pattern: /^[A-G](?:##|#|bb|b|n)?\d?$/,
    code: "capital-note",
    mend: (text) => ({ title: `write ${text.toLowerCase()}`, text: text.toLowerCase() })
  },
  { pattern: /^'/, code: "bad-mark" }
];
function slipProblem(text, pos) {
  const slip = slips2.find((row3) => row3.pattern.test(text));
  const mended = slip?.mend?.(text);
  const shown = text.length > 40 ? `${text.slice(0, 40)}\u2026` : text;
  return {
    code: slip?.code ?? "not-understood",
    pos,
    len: text.length,
    slots: { text: shown, meant: mended?.text.trim() ?? "", ...slip?.slots },
    ...mended === void 0 ? {} : { fixes: [{ title: mended.title, edits: [{ pos, len: text.length, text: mended.text }] }] }
  };
}

// grammar/lanes/parser.ts
var noSuffixes = [];
var noMembers = [];
var endOf = (token2) => token2.startOffset + token2.image.length;
var spanOf = (token2) => ({ pos: token2.startOffset, len: token2.image.length });
var unquoted = (image) => image.slice(1, -1).replaceAll('""', '"');
var noteThenTie = new RegExp(`^(${source.spelling})(${source.tie})?$`);
var movedMember = /^-(?:\((up|down|home)\))?/;
var wordsInRound = /^\(\s*(above|below)\s+("(?:[^"]|"")*")\s*\)$/;
var placeInRound = /^\(\s*(?:above|below|after|before)\s*\)$/;
var wholeLabel = /^([A-Za-z]\w*)(?:\.(\d+))?(\?)?$/;
var optionsPlace = new RegExp(`^<(?:(${source.name})((?:${source.annotation})*)[ \\t]+)?`);
var annotationPattern = new RegExp(source.annotation, "g");
var RECORDED = {
  image: "",
  startOffset: 0,
  tokenType: JunkToken,
  tokenTypeIdx: 0
};
var RECORDED_BAR = { kind: "barline", pos: 0, len: 0, shape: "|", editors: false, suffixes: [] };
var mayFollowRound = /* @__PURE__ */ new Set([SpanClose, OptionsClose, OptionNext, BareNext, Bar, BadBar]);
var junkTokens = /* @__PURE__ */ new Set([JunkToken, OpenQuote, CurlyQuoted]);
var silences = /* @__PURE__ */ new Map([
  [Rest, "rest"],
  [BarRest, "barRest"],
  [Gap, "gap"],
  [BarGap, "barGap"]
]);
var bracketJunk = /^(?:[{}<>;]|\{.*|<.*:|;.*:)$/;
var spanList = [...spanWords.keys()].join(", ");
function annotationOf(image, pos) {
  const inner = image.slice(1);
  const at = { pos, len: image.length };
  return inner.startsWith('"') ? { kind: "annotation", ...at, text: unquoted(inner) } : { kind: "annotation", ...at, ref: inner };
}
function labelsOf(head2) {
  const before = (head2.tokenType === OptionsOpen ? optionsPlace : /^;[ \t]*/).exec(head2.image)?.[0].length ?? 0;
  if (!head2.image.endsWith(":")) return [];
  const labels2 = [];
  let pos = head2.startOffset + before;
  for (const text of head2.image.slice(before, -1).split(",")) {
    const [, name3 = text, layer, doubt] = wholeLabel.exec(text) ?? [];
    labels2.push({
      pos,
      len: text.length,
      name: name3,
      ...layer === void 0 ? {} : { layer: Number(layer) },
      doubtful: doubt !== void 0
    });
    pos += text.length + 1;
  }
  return labels2;
}
var moveProblem = (problem, by) => ({
  ...problem,
  pos: problem.pos + by,
  ...problem.fixes === void 0 ? {} : {
    fixes: problem.fixes.map((fix) => ({
      ...fix,
      edits: fix.edits.map((edit) => ({ ...edit, pos: edit.pos + by }))
    }))
  }
});
var LaneParser = class extends EmbeddedActionsParser {
  problems = new ProblemList();
  broken = false;
  /** Where the last token ended, to see what is glued to what. */
  lastEnd = -1;
  afterJunk = false;
  segment;
  inside;
  opening;
  /** The bar before the one that is parsed. */
  before;
  constructor() {
    super([...laneTokens, Again], { maxLookahead: 1, recoveryEnabled: false });
    const suffixes2 = this.RULE("suffixes", () => {
      let list;
      this.MANY(() => {
        const suffix2 = this.OR([
          { ALT: () => this.mark(this.CONSUME(MarkToken)) },
          { ALT: () => this.annotation(this.CONSUME(Annotated)) }
        ]);
        if (list === void 0) list = [suffix2];
        else list.push(suffix2);
      });
      return list ?? noSuffixes;
    });
    const chord = this.RULE("chord", () => {
      const first2 = this.taken(this.CONSUME(Note));
      const members = [this.member(first2, this.SUBRULE(suffixes2))];
      this.MANY(() => {
        const next = this.CONSUME(Member);
        this.expectGlued(next, "member-apart");
        members.push(this.member(this.taken(next), this.SUBRULE2(suffixes2)));
      });
      return this.event(first2, "note", members, noSuffixes);
    });
    const silence = this.RULE("silence", () => {
      const token2 = this.known(
        this.OR([
          { ALT: () => this.CONSUME(Rest) },
          { ALT: () => this.CONSUME(BarRest) },
          { ALT: () => this.CONSUME(Gap) },
          { ALT: () => this.CONSUME(BarGap) }
        ])
      );
      this.taken(token2);
      return this.event(token2, silences.get(token2.tokenType) ?? "rest", noMembers, this.SUBRULE(suffixes2));
    });
    const repeat = this.RULE("repeat", () => {
      const token2 = this.taken(this.CONSUME(Repeat));
      const event2 = this.event(token2, "repeat", noMembers, this.SUBRULE(suffixes2));
      const tie2 = tieOf(token2.image);
      return tie2 === void 0 ? event2 : { ...event2, tie: tie2 };
    });
    const bar = this.RULE("bar", () => {
      const token2 = this.known(this.OR([{ ALT: () => this.CONSUME(Bar) }, { ALT: () => this.CONSUME(BadBar) }]));
      if (!this.afterJunk) this.expectApart(token2, "barline-glued");
      this.taken(token2);
      let line = this.barline(token2, this.SUBRULE(suffixes2));
      this.OPTION(() => {
        const again2 = this.taken(this.known(this.CONSUME(Again)));
        line = this.joined(line, this.barline(again2, this.SUBRULE2(suffixes2)));
      });
      return line;
    });
    this.opening = this.RULE("opening", () => {
      const own = this.SUBRULE(suffixes2);
      let again2;
      this.OPTION(() => {
        again2 = this.SUBRULE(bar);
      });
      return again2 === void 0 ? { suffixes: own } : { suffixes: own, again: again2 };
    });
    const group = this.RULE("group", () => {
      const open = this.known(
        this.OR([{ ALT: () => this.CONSUME(SpanOpen) }, { ALT: () => this.CONSUME(BareOpen) }])
      );
      this.taken(open);
      const items2 = this.SUBRULE1(this.inside);
      this.taken(this.CONSUME(SpanClose));
      return this.groupOf(open, items2, this.SUBRULE(suffixes2));
    });
    const options2 = this.RULE("options", () => {
      const open = this.known(
        this.OR([{ ALT: () => this.CONSUME(OptionsOpen) }, { ALT: () => this.CONSUME(BareOptions) }])
      );
      this.taken(open);
      const found = [this.optionOf(open, this.SUBRULE1(this.inside))];
      this.MANY(() => {
        const next = this.known(
          this.OR2([{ ALT: () => this.CONSUME(OptionNext) }, { ALT: () => this.CONSUME(BareNext) }])
        );
        this.taken(next);
        found.push(this.optionOf(next, this.SUBRULE2(this.inside)));
      });
      this.taken(this.CONSUME(OptionsClose));
      return this.optionsOf(open, found, this.SUBRULE(suffixes2));
    });
    const item2 = this.RULE(
      "item",
      () => this.OR([
        { ALT: () => this.SUBRULE(chord) },
        { ALT: () => this.value(this.taken(this.CONSUME(Value))) },
        { ALT: () => this.SUBRULE(silence) },
        { ALT: () => this.SUBRULE(repeat) },
        { ALT: () => this.SUBRULE(group) },
        { ALT: () => this.SUBRULE(options2) },
        { ALT: () => this.beam(this.CONSUME(Beam)) },
        { ALT: () => this.round(this.roundApart(this.CONSUME(Round))) },
        { ALT: () => this.words(this.taken(this.CONSUME(Quoted))) },
        { ALT: () => this.lost(this.taken(this.CONSUME(Lost))) },
        { ALT: () => this.junk(this.taken(this.CONSUME(MarkToken)), "mark-without-event") },
        { ALT: () => this.junk(this.taken(this.CONSUME(Annotated)), "annotation-without-event") },
        { ALT: () => this.junk(this.taken(this.CONSUME(Member)), "member-without-chord") },
        { ALT: () => ({ kind: "omit", ...spanOf(this.taken(this.CONSUME(Omit))) }) },
        { ALT: () => this.junk(this.taken(this.CONSUME(OpenQuote)), "unclosed-string") },
        { ALT: () => this.curlyQuoted(this.taken(this.CONSUME(CurlyQuoted))) },
        { ALT: () => this.slip(this.taken(this.CONSUME(JunkToken))) }
      ])
    );
    this.inside = this.RULE("inside", () => {
      const items2 = [];
      this.MANY(() => {
        items2.push(this.OR([{ ALT: () => this.SUBRULE(item2) }, { ALT: () => this.SUBRULE(bar) }]));
      });
      return items2;
    });
    this.segment = this.RULE("segment", () => {
      const items2 = [];
      let closing2;
      this.MANY(() => {
        items2.push(this.SUBRULE(item2));
      });
      this.OPTION(() => {
        closing2 = this.SUBRULE(bar);
      });
      return { items: items2, bar: closing2 };
    });
    this.performSelfAnalysis();
  }
  /**
   * Parses the tokens of one bar, its barline the last of them; brackets must be in balance.
   * @param problems takes what is wrong with them
   * @param before the bar before it in the lane
   */
  parseBar(tokens, problems, before) {
    this.begin(tokens, problems, -1);
    this.before = before;
    const { items: items2, bar } = this.segment();
    this.refuseOmit(items2);
    return { items: items2, bar, broken: this.broken };
  }
  /** Parses what belongs to the opening barline of a lane: marks and annotations glued to it, the barline of the next line. */
  parseOpening(tokens, problems) {
    this.begin(tokens, problems, 0);
    return this.opening();
  }
  begin(tokens, problems, lastEnd) {
    this.problems = problems;
    this.broken = false;
    this.afterJunk = false;
    this.lastEnd = lastEnd;
    this.input = tokens;
  }
  // ─── what the rules make ─────────────────────────────────────────────────────────────────────────────────────────
  /** A token; while chevrotain records the grammar a choice among tokens gives none, and any will do. */
  known(token2) {
    return token2.image === void 0 ? RECORDED : token2;
  }
  taken(token2) {
    this.afterJunk = junkTokens.has(token2.tokenType);
    this.lastEnd = endOf(token2);
    return token2;
  }
  report(code, at, slots = {}) {
    this.problems.push({ code, pos: at.pos, len: at.len, slots });
  }
  reportFixed(code, at, slots, title, edit) {
    this.problems.push({ code, pos: at.pos, len: at.len, slots, fixes: [{ title, edits: [edit] }] });
  }
  expectGlued(token2, code) {
    const gap = token2.startOffset - this.lastEnd;
    if (gap <= 0) return;
    this.reportFixed(code, spanOf(token2), { text: token2.image }, "take the white space away", {
      pos: this.lastEnd,
      len: gap,
      text: ""
    });
  }
  expectApart(token2, code) {
    if (token2.startOffset !== this.lastEnd) return;
    this.reportFixed(code, spanOf(token2), { text: token2.image }, "put white space before it", {
      pos: token2.startOffset,
      len: 0,
      text: " "
    });
  }
  mark(token2) {
    this.expectGlued(token2, "mark-apart");
    this.taken(token2);
    const form = markOf(token2.image);
    return { kind: "mark", ...spanOf(token2), form };
  }
  annotation(token2) {
    this.expectGlued(token2, "mark-apart");
    this.taken(token2);
    return annotationOf(token2.image, token2.startOffset);
  }
  event(first2, what, members, suffixes2) {
    return { kind: "event", what, pos: first2.startOffset, len: this.lastEnd - first2.startOffset, members, suffixes: suffixes2 };
  }
  member(token2, suffixes2) {
    const moved = movedMember.exec(token2.image);
    const [, noteText = "", tieText] = noteThenTie.exec(token2.image.slice(moved?.[0].length ?? 0)) ?? [];
    const tie2 = tieText === void 0 ? void 0 : tieOf(tieText);
    const stave = moved?.[1];
    return {
      pos: token2.startOffset,
      len: this.lastEnd - token2.startOffset,
      spelling: spellingOf(noteText),
      ...stave === void 0 ? {} : { stave },
      ...tie2 === void 0 ? {} : { tie: tie2 },
      suffixes: suffixes2
    };
  }
  value(token2) {
    const form = valueFormOf(token2.image);
    const at = spanOf(token2);
    if (form === void 0) return { kind: "junk", ...at };
    if (form.duration === void 0) {
      this.broken = true;
      this.report("impossible-value", at, { text: token2.image });
    }
    return { kind: "value", ...at, form };
  }
  lost(token2) {
    const rest = token2.image.slice("lost".length).trim();
    const form = rest === "" || rest === "?" ? void 0 : valueFormOf(rest);
    if (rest === "") {
      this.broken = true;
      this.report("lost-without-value", spanOf(token2));
    } else if (form !== void 0 && form.duration === void 0) {
      this.broken = true;
      this.report("impossible-value", spanOf(token2), { text: rest });
    }
    return { kind: "lost", ...spanOf(token2), ...form === void 0 ? {} : { form } };
  }
  beam(token2) {
    this.expectApart(token2, "beam-glued");
    this.taken(token2);
    return { kind: "beam", ...spanOf(token2), join: token2.image === "&" };
  }
  words(token2) {
    return { kind: "words", ...spanOf(token2), text: unquoted(token2.image) };
  }
  curlyQuoted(token2) {
    const inner = token2.image.replace(/[“”„«»‟]/g, "");
    this.broken = true;
    this.reportFixed("typographic-quotes", spanOf(token2), { quote: token2.image.charAt(0) }, "write straight quotes", {
      ...spanOf(token2),
      text: `"${inner}"`
    });
    return { kind: "junk", ...spanOf(token2) };
  }
  /** Round brackets after white space: a change of state, or words above or below. */
  round(token2) {
    const at = spanOf(token2);
    const words3 = wordsInRound.exec(token2.image);
    if (words3?.[2] !== void 0) {
      return { kind: "words", ...at, text: unquoted(words3[2]), place: words3[1] };
    }
    if (placeInRound.test(token2.image)) return this.placeApart(token2);
    const { change, problems } = parseChange(token2.image);
    for (const problem of problems) this.problems.push(moveProblem(problem, at.pos));
    if (change !== void 0) return { kind: "change", ...at, change };
    this.broken = true;
    if (problems.length === 0) this.report("not-understood", at, { text: token2.image, meant: "" });
    return { kind: "junk", ...at };
  }
  /** A change or words: a sign with round brackets glued to it would be another thing. */
  roundApart(token2) {
    const before = this.LA(-1);
    if (before.tokenType !== OptionsOpen && before.tokenType !== OptionNext)
      this.expectApart(token2, "bracket-glued");
    this.taken(token2);
    const next = this.LA(1);
    const end = endOf(token2);
    if (next.startOffset === end && !mayFollowRound.has(next.tokenType)) {
      const edit = { pos: end, len: 0, text: " " };
      this.reportFixed("bracket-glued", spanOf(token2), { text: token2.image }, "put white space after it", edit);
    }
    return token2;
  }
  /** `(above)` after white space: only a sign before it can be meant. */
  placeApart(token2) {
    const at = spanOf(token2);
    const before = this.LA(-1);
    this.broken = true;
    if (before.tokenType !== MarkToken) this.report("place-apart", at, { text: token2.image });
    else {
      const pos = endOf(before);
      const edit = { pos, len: at.pos - pos, text: "" };
      this.reportFixed("place-apart", at, { text: token2.image }, "take the white space away", edit);
    }
    return { kind: "junk", ...at };
  }
  junk(token2, code) {
    this.broken = true;
    this.report(code, spanOf(token2), { text: token2.image.slice(0, 40) });
    return { kind: "junk", ...spanOf(token2) };
  }
  slip(token2) {
    this.broken = true;
    if (bracketJunk.test(token2.image)) return { kind: "junk", ...spanOf(token2) };
    const problem = slipProblem(token2.image, token2.startOffset);
    const dots = problem.code === "lone-dot" ? this.dotFixes(token2) : [];
    this.problems.push(dots.length === 0 ? problem : { ...problem, fixes: dots });
    return { kind: "junk", ...spanOf(token2) };
  }
  /** A dot apart from its value is joined to it; one after a barline belongs to the note before. */
  dotFixes(dot) {
    const before = this.LA(-1);
    if (before.tokenType === Value) {
      const pos = endOf(before);
      return [{ title: "take the white space away", edits: [{ pos, len: dot.startOffset - pos, text: "" }] }];
    }
    const [note, value2] = [this.before?.items.at(-1), this.before?.items.at(-2)];
    if (note?.kind !== "event" || note.what !== "note" || value2?.kind !== "value") return [];
    const edits = [
      { pos: value2.pos + value2.len, len: 0, text: "." },
      { pos: note.pos + note.len, len: 0, text: "'through(dot)" },
      { pos: dot.startOffset, len: 1, text: "" }
    ];
    return [{ title: "let the note before run through the barline", edits }];
  }
  /** A barline with what is glued to it. */
  barline(token2, suffixes2) {
    if (this.RECORDING_PHASE) return RECORDED_BAR;
    return { ...barlineOf(token2, this.problems), len: this.lastEnd - token2.startOffset, suffixes: suffixes2 };
  }
  joined(above, below) {
    return this.RECORDING_PHASE ? above : joinedBarline(above, below, this.problems);
  }
  refuseOmit(items2) {
    for (const item2 of items2) {
      if (item2.kind !== "omit") continue;
      this.broken = true;
      this.report("omit-misplaced", item2);
    }
  }
  groupOf(open, items2, suffixes2) {
    if (items2.some?.((item2) => item2.kind === "omit")) this.refuseOmit(items2);
    const head2 = spanHeadOf(open.image) ?? { text: "{" };
    const at = spanOf(open);
    if (open.tokenType === BareOpen) {
      this.broken = true;
      this.report("span-without-head", at);
    } else this.checkHead(head2, at);
    return { kind: "span", pos: open.startOffset, len: this.lastEnd - open.startOffset, head: head2, items: items2, suffixes: suffixes2 };
  }
  checkHead(head2, at) {
    const word = head2.word;
    if (head2.proportion !== void 0 && !isPossibleProportion(head2.proportion)) {
      this.broken = true;
      this.report("impossible-proportion", at, { text: head2.text.slice(1) });
    }
    if (word === void 0) {
      if (head2.proportion === void 0) {
        this.broken = true;
        this.report("unknown-span", at, { text: head2.text.slice(1), known: spanList });
      } else if (head2.readings !== void 0) this.report("span-takes-no-readings", at, { text: head2.text.slice(1) });
      return;
    }
    const allowed = spanWords.get(word);
    if (head2.readings !== void 0 && allowed?.readings !== true) {
      this.report("span-takes-no-readings", at, { text: word });
    }
    const numbers = head2.ratio !== void 0 ? "ratio" : head2.proportion !== void 0 ? "proportion" : void 0;
    if (numbers !== void 0 && allowed?.[numbers] !== true) this.report("span-takes-no-ratio", at, { text: word });
  }
  optionOf(open, items2) {
    const labels2 = labelsOf(open);
    if (open.tokenType === BareOptions || open.tokenType === BareNext) {
      this.broken = true;
      this.report("option-without-label", { pos: open.startOffset, len: 1 });
    }
    const omit = items2.length === 1 && items2[0]?.kind === "omit";
    if (!omit && items2.some?.((item2) => item2.kind === "omit")) this.refuseOmit(items2);
    const pos = labels2[0]?.pos ?? endOf(open);
    return { pos, len: Math.max(this.lastEnd - pos, 0), labels: labels2, omit, items: items2 };
  }
  optionsOf(open, options2, suffixes2) {
    const [, name3, reasonText = ""] = optionsPlace.exec(open.image) ?? [];
    const reasons2 = [];
    const reasonsAt = open.startOffset + 1 + (name3?.length ?? 0);
    for (const match of reasonText.matchAll(annotationPattern)) {
      reasons2.push(annotationOf(match[0], reasonsAt + match.index));
    }
    return {
      kind: "options",
      pos: open.startOffset,
      len: this.lastEnd - open.startOffset,
      ...name3 === void 0 ? {} : { place: { text: name3, pos: open.startOffset + 1, len: name3.length } },
      reasons: reasons2,
      options: options2,
      suffixes: suffixes2
    };
  }
};

// grammar/lanes/sublane.ts
var figurePattern = /^(\[)?(##|#|bb|b|n)?(\d{1,2})?(##|#|bb|b|n)?(\+)?(\])?$/;
function figureOf(text) {
  const [, open, before, number, after, stroke, close] = figurePattern.exec(text) ?? [];
  const accidental2 = before ?? after;
  if (number === void 0 && accidental2 === void 0) return void 0;
  if (open === void 0 !== (close === void 0)) return void 0;
  return {
    ...number === void 0 ? {} : { number: Number(number) },
    ...accidental2 === void 0 ? {} : { accidental: accidental2 },
    stroked: stroke !== void 0,
    editors: open !== void 0
  };
}
function figures(token2, problems) {
  const at = { pos: token2.startOffset, len: token2.image.length };
  const item2 = (what, columns2) => ({
    kind: "figures",
    ...at,
    what,
    columns: columns2
  });
  if (token2.image === "_") return item2("none", []);
  if (token2.image === "=") return item2("hold", []);
  const columns = token2.image.split(",").map((column) => column.split("/").map(figureOf));
  if (columns.every((column) => column.every((figure) => figure !== void 0))) {
    return item2("figures", columns);
  }
  problems.push({ code: "bad-figure", ...at, slots: { text: token2.image.slice(0, 40) } });
  return { kind: "junk", ...at };
}
function syllable(token2) {
  const at = { pos: token2.startOffset, len: token2.image.length };
  const quoted3 = token2.tokenType === Quoted;
  if (!quoted3 && (token2.image === "_" || token2.image === "=")) {
    return { kind: "syllable", ...at, what: token2.image === "_" ? "none" : "hold", text: "", goesOn: false };
  }
  const whole3 = quoted3 ? token2.image.slice(1, -1).replaceAll('""', '"') : token2.image;
  const goesOn = !quoted3 && whole3.endsWith("-");
  return { kind: "syllable", ...at, what: "syllable", text: goesOn ? whole3.slice(0, -1) : whole3, goesOn };
}
function subItem(kind, token2, problems) {
  if (kind === "text") return syllable(token2);
  return figures(token2, problems);
}

// grammar/lanes/lane.ts
var parser = new LaneParser();
var opens = /* @__PURE__ */ new Set([SpanOpen, BareOpen, OptionsOpen, BareOptions]);
var closes = /* @__PURE__ */ new Set([SpanClose, OptionsClose]);
var bars = /* @__PURE__ */ new Set([Bar, BadBar]);
var attached = /* @__PURE__ */ new Set([MarkToken, Annotated]);
var endOf2 = (token2) => token2.startOffset + token2.image.length;
function cutAtBarlines(tokens) {
  const found = [];
  let current = [];
  let depth = 0;
  let barEnd = -1;
  for (const token2 of tokens) {
    const isGlued = token2.startOffset === barEnd && attached.has(token2.tokenType);
    if (isGlued || barEnd >= 0 && token2.tokenType === Again) {
      found.at(-1)?.push(token2);
      barEnd = endOf2(token2);
      continue;
    }
    barEnd = -1;
    current.push(token2);
    if (opens.has(token2.tokenType)) depth++;
    else if (closes.has(token2.tokenType)) depth--;
    else if (depth === 0 && bars.has(token2.tokenType)) {
      found.push(current);
      current = [];
      barEnd = endOf2(token2);
    }
  }
  if (current.length > 0) found.push(current);
  return found;
}
function joinBarlines(tokens, joints) {
  const lineStarts = new Set(joints.slice(1));
  let barEnd = -1;
  for (const token2 of tokens) {
    const isBar = bars.has(token2.tokenType);
    if (isBar && barEnd >= 0 && lineStarts.has(token2.startOffset)) {
      token2.tokenType = Again;
      token2.tokenTypeIdx = Again.tokenTypeIdx ?? 0;
      barEnd = endOf2(token2);
    } else if (isBar) barEnd = endOf2(token2);
    else if (token2.startOffset === barEnd && attached.has(token2.tokenType)) barEnd = endOf2(token2);
    else barEnd = -1;
  }
}
var spanOf2 = (token2) => ({ pos: token2.startOffset, len: token2.image.length });
function parseSubBar(kind, tokens, problems) {
  const items2 = [];
  let bar;
  for (const token2 of tokens) {
    if (bar !== void 0 && token2.tokenType === Again)
      bar = joinedBarline(bar, barlineOf(token2, problems), problems);
    else if (bars.has(token2.tokenType)) bar = barlineOf(token2, problems);
    else if (token2.tokenType === OpenQuote) {
      problems.push({ code: "unclosed-string", ...spanOf2(token2), slots: {} });
      items2.push({ kind: "junk", ...spanOf2(token2) });
    } else items2.push(subItem(kind, token2, problems));
  }
  return { items: items2, bar, broken: items2.some((item2) => item2.kind === "junk") };
}
function cutOpening(kind, tokens, joints) {
  const found = [];
  let end = 0;
  for (const token2 of tokens) {
    const isGlued = kind === "lane" && token2.startOffset === end && attached.has(token2.tokenType);
    const isNextLine = joints.includes(token2.startOffset, 1) && bars.has(token2.tokenType) && !found.some((one) => bars.has(one.tokenType));
    if (!isGlued && !isNextLine) break;
    found.push(token2);
    end = endOf2(token2);
  }
  return found;
}
function parseOpening(kind, tokens, problems) {
  if (tokens.length === 0) return noOpening;
  if (kind === "lane") return parser.parseOpening(tokens, problems);
  const [bar] = tokens;
  return bar === void 0 ? noOpening : { suffixes: [], again: barlineOf(bar, problems) };
}
var noOpening = { suffixes: [] };
function parseLane(kind, text, joints) {
  const { tokens } = (kind === "lane" ? laneLexer : subLaneLexer).tokenize(text);
  const problems = new ProblemList();
  if (kind === "lane") balance(tokens, problems);
  const openingTokens = cutOpening(kind, tokens, joints);
  const opening = parseOpening(kind, openingTokens, problems);
  const rest = tokens.slice(openingTokens.length);
  joinBarlines(rest, joints);
  const segments = [];
  const lastOpening = openingTokens.at(-1);
  let pos = lastOpening === void 0 ? 0 : endOf2(lastOpening);
  for (const barTokens of cutAtBarlines(rest)) {
    const { items: items2, bar, broken } = kind === "lane" ? parser.parseBar(barTokens, problems, segments.at(-1)) : parseSubBar(kind, barTokens, problems);
    const last2 = barTokens.at(-1);
    const end = last2 === void 0 ? pos : endOf2(last2);
    segments.push({ pos, len: end - pos, items: items2, ...bar === void 0 ? {} : { bar }, broken });
    pos = end;
  }
  return { kind, text, joints, opening, segments, problems: problems.all() };
}

// grammar/place.ts
function indexAtOrBelow(sorted, value2) {
  let low = 0;
  let high = sorted.length - 1;
  while (low < high) {
    const middle = low + high + 1 >> 1;
    if ((sorted[middle] ?? 0) <= value2) low = middle;
    else high = middle - 1;
  }
  return low;
}
function offsetIn(block, placed, pos) {
  const line = indexAtOrBelow(placed.tree.joints, pos);
  return block.offset + (placed.starts[line] ?? 0) + pos - (placed.tree.joints[line] ?? 0);
}

// grammar/parse.ts
var noCache = { lane: parseLane, statement: parseStatement };
function linesOf(text) {
  const lines2 = [];
  const ends = /\r\n|\n|\r/g;
  let start = 0;
  for (let end = ends.exec(text); end !== null; end = ends.exec(text)) {
    lines2.push({ text: text.slice(start, end.index), start, number: lines2.length });
    start = end.index + end[0].length;
  }
  lines2.push({ text: text.slice(start), start, number: lines2.length });
  return lines2;
}
var name2 = source.name;
var laneStart = new RegExp(`^(\\s*)(?:(${name2})(?:(\\s+)(${name2}))?\\s*)?(:?\\|[|:]*(?:\\[\\])?)`);
var headGoesOn = /^\s*(?:(?:key|meter|tempo|at|loose|free)\b|\S+\s+[A-Za-z]\d+(?:\+|\s|$))(?!.*\|)/;
var blank = /^\s*(?:\/\/[^\n]*)?$/;
var knownBarlines = /* @__PURE__ */ new Set(["|", "||", "|||", ":||", "||:", ":||:"]);
var subLanes = /* @__PURE__ */ new Set(["fig", "text"]);
var atStart = { offset: 0 };
var Gathered = class {
  constructor(block) {
    this.block = block;
  }
  block;
  pieces = [];
  joints = [];
  starts = [];
  lines = [];
  length = 0;
  add(line, from2) {
    const piece = line.text.slice(from2);
    this.joints.push(this.length);
    this.starts.push(line.start + from2 - this.block.offset);
    this.lines.push(line.number - this.block.line);
    this.pieces.push(piece);
    this.length += piece.length + 1;
  }
  placed(tree) {
    return { tree, starts: this.starts, lines: this.lines };
  }
  get text() {
    return this.pieces.join("\n");
  }
};
var BlockBuilder = class {
  constructor(kind, offset, line, cache) {
    this.kind = kind;
    this.offset = offset;
    this.line = line;
    this.cache = cache;
  }
  kind;
  offset;
  line;
  cache;
  statements = [];
  lanes = [];
  problems = [];
  statement;
  lane;
  beginStatement(line) {
    this.finish();
    this.statement = new Gathered(this);
    this.statement.add(line, 0);
  }
  /** An indented line that is no lane. */
  continueStatement(line) {
    const indent = /^\s*/.exec(line.text)?.[0].length ?? 0;
    const laneAbove = this.lanes.length > 0 || this.lane !== void 0;
    if (this.kind === "system" && (laneAbove || !headGoesOn.test(line.text))) {
      this.report("lane-without-barline", line, indent);
    } else if (this.statement === void 0) this.report("continues-nothing", line, indent);
    else this.statement.add(line, indent);
  }
  addLane(line, match) {
    const [head2 = "", indent = "", first2, between2 = "", second, bar = "|"] = match;
    if (first2 === void 0) {
      if (this.lane === void 0) this.report("lane-continues-nothing", line, indent.length);
      else this.lane.gathered.add(line, head2.length - bar.length);
      return;
    }
    this.finish();
    const at = line.start - this.offset;
    const kind = subLanes.has(first2) && second === void 0 ? first2 : "lane";
    const known = knownBarlines.has(bar.replace("[]", ""));
    const gathered = new Gathered(this);
    gathered.add(line, head2.length);
    this.lane = {
      gathered,
      kind,
      name: { text: first2, pos: at + indent.length },
      witness: second === void 0 ? void 0 : { text: second, pos: at + indent.length + first2.length + between2.length },
      open: {
        kind: "barline",
        pos: at + head2.length - bar.length,
        len: bar.length,
        shape: known ? bar.replace("[]", "") : "|",
        editors: bar.endsWith("[]"),
        suffixes: []
      }
    };
    if (!known) this.report("bad-barline", line, head2.length - bar.length, bar.slice(0, 20));
    if (this.kind !== "system") this.report("lane-outside-system", line, indent.length);
  }
  report(code, line, from2, text = "") {
    const len = Math.max(line.text.trimEnd().length - from2, 0);
    this.problems.push({ code, pos: line.start + from2 - this.offset, len, slots: { text } });
  }
  finish() {
    if (this.statement !== void 0) {
      const { text, joints } = this.statement;
      this.statements.push(this.statement.placed(this.cache.statement(text, joints)));
      this.statement = void 0;
    }
    if (this.lane !== void 0) {
      const { gathered, kind, name: voice, witness, open } = this.lane;
      const placed = gathered.placed(this.cache.lane(kind, gathered.text, gathered.joints));
      const whole3 = this.joinOpening(open, placed);
      this.lanes.push({ ...placed, name: voice, ...witness === void 0 ? {} : { witness }, open: whole3 });
      this.lane = void 0;
    }
  }
  /** The opening barline with what its tree says belongs to it. */
  joinOpening(open, placed) {
    const { suffixes: suffixes2, again: again2 } = placed.tree.opening;
    if (suffixes2.length === 0 && again2 === void 0) return open;
    const moved = (node) => ({ ...node, pos: offsetIn(atStart, placed, node.pos) });
    const whole3 = { ...open, suffixes: suffixes2.map(moved) };
    if (again2 === void 0) return whole3;
    return joinedBarline(whole3, { ...moved(again2), suffixes: again2.suffixes.map(moved) }, this.problems);
  }
  block(end) {
    this.finish();
    return {
      kind: this.kind,
      line: this.line,
      offset: this.offset,
      length: end - this.offset,
      statements: this.statements,
      lanes: this.lanes,
      problems: this.problems
    };
  }
};
var isSystem = (line) => /^system(?![\w-])/.test(line);
function parseFile(text, cache = noCache) {
  const lines2 = linesOf(text);
  const blocks = [];
  let current = new BlockBuilder("head", 0, 0, cache);
  const begin = (kind, line) => {
    if (line.start > 0) blocks.push(current.block(line.start));
    current = new BlockBuilder(kind, line.start, line.number, cache);
  };
  for (const line of lines2) {
    if (blank.test(line.text)) continue;
    const lane = laneStart.exec(line.text);
    if (lane !== null) current.addLane(line, lane);
    else if (/^\s/.test(line.text)) current.continueStatement(line);
    else {
      if (isSystem(line.text)) begin("system", line);
      else if (current.kind === "system") begin("between", line);
      current.beginStatement(line);
    }
  }
  blocks.push(current.block(text.length));
  return { text, blocks, lineStarts: lines2.map((line) => line.start) };
}

// grammar/print.ts
var endOf3 = ({ pos, len }) => pos + len;
var quoted2 = (text) => `"${text.replaceAll('"', '""')}"`;
var knownBarlines2 = /* @__PURE__ */ new Set(["|", "||", "|||", ":||", "||:", ":||:"]);
var EDITORS2 = "[]";
var barlineHere = /:*\|[|:]*(?:\[\])?/y;
var betweenSigns = /\s+|\/\/[^\n]*/y;
var Leaves = class {
  constructor(block, placed) {
    this.block = block;
    this.placed = placed;
    this.text = placed.tree.text;
  }
  block;
  placed;
  found = [];
  text;
  line = 0;
  last = 0;
  /** A leaf printed as `text`; it ends where the tree says, or after as many characters. */
  put(pos, text, end = pos + text.length) {
    if (end <= pos) return;
    const start = this.inFile(pos);
    this.found.push({ start, end: start + end - pos, text });
    this.last = end;
  }
  /** A leaf that can be written in several ways, as it stands. Of several lines each is a leaf. */
  slice(pos, end) {
    let from2 = pos;
    for (const piece of this.text.slice(pos, end).split("\n")) {
      this.put(from2, piece);
      from2 += piece.length + 1;
    }
  }
  /** A leaf at the next sign after the last leaf, for signs whose places the tree does not keep. */
  next(text) {
    this.put(this.nextSign(), text);
  }
  /** The piece of the text that begins with the next sign and matches. */
  peek(pattern, pos = this.nextSign()) {
    pattern.lastIndex = pos;
    return pattern.exec(this.text)?.[0] ?? "";
  }
  raw(span3) {
    return this.text.slice(span3.pos, endOf3(span3));
  }
  nextSign() {
    let pos = this.last;
    for (let skipped = this.peek(betweenSigns, pos); skipped !== ""; skipped = this.peek(betweenSigns, pos)) {
      pos += skipped.length;
    }
    return pos;
  }
  /** Leaves come in order, so the line is found by going on from the last. */
  inFile(pos) {
    const { joints } = this.placed.tree;
    while (this.line > 0 && (joints[this.line] ?? 0) > pos) this.line--;
    while (this.line + 1 < joints.length && (joints[this.line + 1] ?? 0) <= pos) this.line++;
    return this.block.offset + (this.placed.starts[this.line] ?? 0) + pos - (joints[this.line] ?? 0);
  }
};
function annotation2(leaves, { pos, text, ref }) {
  leaves.put(pos, `*${text === void 0 ? ref : quoted2(text)}`);
}
function suffixes(leaves, all) {
  for (const suffix2 of all) {
    if (suffix2.kind === "mark") leaves.put(suffix2.pos, suffix2.form.text);
    else annotation2(leaves, suffix2);
  }
}
function member(leaves, one, isFirst) {
  const moved = one.stave === void 0 ? "" : `(${one.stave})`;
  leaves.put(one.pos, `${isFirst ? "" : "-"}${moved}${one.spelling.text}`);
  if (one.tie !== void 0) leaves.next(one.tie.text);
  suffixes(leaves, one.suffixes);
}
var silences2 = { rest: "r", barRest: "rbar", gap: "_", barGap: "__" };
function event(leaves, item2) {
  if (item2.what === "note") {
    item2.members.forEach((one, index) => {
      member(leaves, one, index === 0);
    });
    return;
  }
  leaves.put(item2.pos, item2.what === "repeat" ? item2.tie?.text ?? "=" : silences2[item2.what]);
  suffixes(leaves, item2.suffixes);
}
function barline(leaves, bar) {
  const typed = leaves.peek(barlineHere, bar.pos);
  const isDrawn = knownBarlines2.has(typed.replace(EDITORS2, "")) && bar.again === void 0;
  leaves.put(bar.pos, isDrawn ? `${bar.shape}${bar.editors ? EDITORS2 : ""}` : typed);
  if (bar.again === void 0) suffixes(leaves, bar.suffixes);
  else again(leaves, bar.again, bar.suffixes);
}
function again(leaves, second, all) {
  suffixes(
    leaves,
    all.filter(({ pos }) => pos < second.pos)
  );
  leaves.put(second.pos, leaves.peek(barlineHere, second.pos));
  suffixes(
    leaves,
    all.filter(({ pos }) => pos > second.pos)
  );
}
function span2(leaves, item2) {
  leaves.put(item2.pos, item2.head.text);
  items(leaves, item2.items);
  leaves.next("}");
  suffixes(leaves, item2.suffixes);
}
function label2(leaves, one) {
  leaves.put(one.pos, one.name);
  leaves.slice(one.pos + one.name.length, endOf3(one));
}
function options(leaves, item2) {
  leaves.put(item2.pos, "<");
  if (item2.place !== void 0) leaves.put(item2.place.pos, item2.place.text);
  for (const reason of item2.reasons) annotation2(leaves, reason);
  item2.options.forEach((option, index) => {
    if (index > 0) leaves.next(";");
    option.labels.forEach((one, at) => {
      if (at > 0) leaves.next(",");
      label2(leaves, one);
    });
    if (option.labels.length > 0) leaves.next(":");
    items(leaves, option.items);
  });
  leaves.next(">");
  suffixes(leaves, item2.suffixes);
}
function words2(leaves, item2) {
  if (item2.place === void 0) leaves.put(item2.pos, quoted2(item2.text));
  else {
    leaves.put(item2.pos, "(");
    leaves.next(item2.place);
    leaves.next(quoted2(item2.text));
    leaves.next(")");
  }
}
function syllable2(leaves, item2) {
  const plain = `${item2.text}${item2.goesOn ? "-" : ""}`;
  if (item2.what === "syllable") leaves.put(item2.pos, plain.length === item2.len ? plain : quoted2(item2.text));
  else leaves.put(item2.pos, item2.what === "none" ? "_" : "=");
}
function item(leaves, one) {
  switch (one.kind) {
    case "value":
      leaves.put(one.pos, one.form.text);
      break;
    case "event":
      event(leaves, one);
      break;
    case "span":
      span2(leaves, one);
      break;
    case "options":
      options(leaves, one);
      break;
    case "change":
      leaves.put(one.pos, one.change.text);
      break;
    case "words":
      words2(leaves, one);
      break;
    case "beam":
      leaves.put(one.pos, one.join ? "&" : ",");
      break;
    case "lost":
      leaves.put(one.pos, "lost");
      if (one.form !== void 0) leaves.next(one.form.text);
      else if (one.len > "lost".length) leaves.next("?");
      break;
    case "omit":
      leaves.put(one.pos, "omit");
      break;
    case "barline":
      barline(leaves, one);
      break;
    case "figures":
      if (one.what === "figures") leaves.slice(one.pos, endOf3(one));
      else leaves.put(one.pos, one.what === "none" ? "_" : "=");
      break;
    case "syllable":
      syllable2(leaves, one);
      break;
    case "junk":
      leaves.slice(one.pos, endOf3(one));
      break;
  }
}
function items(leaves, all) {
  for (const one of all) item(leaves, one);
}
function laneLeaves(block, placed) {
  const leaves = new Leaves(block, placed);
  const { opening, segments } = placed.tree;
  suffixes(leaves, opening.suffixes);
  if (opening.again !== void 0) barline(leaves, opening.again);
  for (const segment of segments) {
    items(leaves, segment.items);
    if (segment.bar !== void 0) barline(leaves, segment.bar);
  }
  return leaves.found;
}
function openingLeaves(tree, block, lane) {
  const { open } = lane;
  const leaf = (pos, text) => {
    const start = block.offset + pos;
    return { start, end: start + text.length, text };
  };
  const at = block.offset + open.pos;
  const typed = tree.text.slice(at, at + open.len);
  const isDrawn = knownBarlines2.has(typed.replace(EDITORS2, "")) && lane.tree.opening.again === void 0;
  return [
    leaf(lane.name.pos, lane.name.text),
    ...lane.witness === void 0 ? [] : [leaf(lane.witness.pos, lane.witness.text)],
    leaf(open.pos, isDrawn ? `${open.shape}${open.editors ? EDITORS2 : ""}` : typed)
  ];
}
function string2(leaves, arg) {
  const raw = leaves.raw(arg);
  const isQuoted = raw.length > 1 && raw.startsWith('"') && raw.endsWith('"') && raw.length === quoted2(arg.text).length;
  if (isQuoted) leaves.put(arg.pos, quoted2(arg.text));
  else leaves.slice(arg.pos, endOf3(arg));
}
function argument(leaves, arg) {
  switch (arg.kind) {
    case "word":
      arg.text.split(" ").forEach((word, index) => {
        if (index === 0) leaves.put(arg.pos, word);
        else leaves.next(word);
      });
      break;
    case "name":
    case "number":
      leaves.put(arg.pos, arg.text);
      break;
    case "string":
      string2(leaves, arg);
      break;
    case "names":
      for (const name3 of arg.names) leaves.put(name3.pos, name3.text);
      break;
    case "value":
      leaves.put(arg.pos, arg.form.text);
      break;
    case "pitch":
      leaves.put(arg.pos, arg.spelling.text);
      break;
    case "pair":
      leaves.put(arg.pos, arg.first.text);
      leaves.put(endOf3(arg) - arg.second.text.length, arg.second.text);
      break;
    default:
      leaves.slice(arg.pos, endOf3(arg));
  }
}
function clauses(leaves, all, known) {
  for (const clause of all) {
    const opens2 = lookUp(known, clause.name)?.opens;
    if (opens2 === void 0 || opens2 === ":") leaves.put(clause.pos, opens2 ?? clause.name);
    for (const arg of clause.args) argument(leaves, arg);
  }
}
function recipe(leaves, { phrases }) {
  for (const step of phrases.flatMap((phrase) => phrase.steps)) leaves.slice(step.pos, endOf3(step));
}
function row(leaves, one, known, word) {
  if (word !== void 0) leaves.put(one.pos, word);
  for (const arg of one.args) argument(leaves, arg);
  clauses(leaves, one.clauses, known);
  if (one.recipe !== void 0) recipe(leaves, one.recipe);
}
function statementLeaves(block, placed) {
  const leaves = new Leaves(block, placed);
  const { keyword, args, clauses: own, rows } = placed.tree.statement;
  const entry = lookUp(statements, keyword);
  if (entry === void 0) return [];
  leaves.put(0, keyword);
  for (const arg of args) argument(leaves, arg);
  const inOrder2 = [
    ...own.map((clause) => ({ at: clause.pos, print: () => clauses(leaves, [clause], entry.clauses) })),
    ...rows.map((one) => ({
      at: one.pos,
      print: () => row(leaves, one, entry.rows?.clauses ?? {}, entry.rows?.word)
    }))
  ].sort((a, b) => a.at - b.at);
  for (const { print } of inOrder2) print();
  return leaves.found;
}
var leavesOfLane = (tree, block, lane) => [
  ...openingLeaves(tree, block, lane),
  ...laneLeaves(block, lane)
];
function leavesOf(tree) {
  return tree.blocks.flatMap(
    (block) => [
      ...block.statements.map((placed) => statementLeaves(block, placed)),
      ...block.lanes.map((lane) => leavesOfLane(tree, block, lane))
    ].sort(([a], [b]) => (a?.start ?? 0) - (b?.start ?? 0)).flat()
  );
}
function printFile(tree) {
  const pieces = [];
  let from2 = 0;
  for (const { start, end, text } of leavesOf(tree)) {
    pieces.push(tree.text.slice(from2, start), text);
    from2 = end;
  }
  pieces.push(tree.text.slice(from2));
  return pieces.join("");
}

// grammar/statements/read.ts
var isOf = (kind) => (arg) => arg.kind === kind;
var allOf = (args, kind) => args.filter(isOf(kind));
var firstOf = (args, kind) => args.find(isOf(kind));
function afterWord2(args, word) {
  const index = args.findIndex((arg) => arg.kind === "word" && arg.text === word);
  return index < 0 ? void 0 : args[index + 1];
}
var clausesOf = (holder, name3) => holder.clauses.filter((clause) => clause.name === name3);

// server/checks/check.ts
var check = (name3, needs, run) => ({ name: name3, needs, run });
var problemAt = (code, { pos, len, block, lane, statement }, slots, fixes = []) => ({
  problem: { code, pos, len, slots, ...fixes.length === 0 ? {} : { fixes } },
  block,
  lane,
  ...statement === void 0 ? {} : { statement }
});
function nameInstead(name3, at, known) {
  const meant = nearest(name3, known);
  return meant === void 0 ? [] : [{ title: `write ${meant}`, edits: [{ pos: at.pos, len: at.len, text: meant }] }];
}

// server/checks/clefs.ts
var drawn2 = (clefs) => clefs.map(clefText).join("+");
var headClefs = (tree, system) => {
  const head2 = tree.blocks[system.block]?.statements[0]?.tree.statement;
  return clausesOf(head2 ?? { clauses: [] }, "clef").flatMap(({ args }) => {
    const [stave, clef] = [firstOf(args, "name"), firstOf(args, "clef")];
    if (stave === void 0 || clef === void 0) return [];
    return [{ stave: stave.text, text: drawn2(clef.clefs), pos: clef.pos, len: clef.len }];
  });
};
var announced = ({ score }) => score.changes.filter(
  (change) => change.clefs !== void 0 && change.source !== void 0 && equal(change.onset, score.duration)
);
var clefsAtHeads = check(
  "clef-change-at-head",
  ["tree", "environment", "score"],
  ({ tree, environment, score }) => score.pieces.flatMap(
    ({ systems }) => systems.flatMap((system, index) => {
      const before = systems[index - 1];
      if (before === void 0) return [];
      const heads = headClefs(tree, system);
      return announced(before).flatMap((change) => {
        const stave = environment.staves[change.stave ?? -1]?.name;
        const text = drawn2(change.clefs ?? []);
        const head2 = heads.find((one) => one.stave === stave);
        if (head2 === void 0 || head2.text === text || change.source === void 0) return [];
        const spot = { pos: head2.pos, len: head2.len, block: system.block, statement: 0 };
        const slots = { stave: head2.stave, head: head2.text, announced: text };
        const fix = { title: `write ${text}`, edits: [{ pos: head2.pos, len: head2.len, text }] };
        const source2 = { ...change.source, block: before.block };
        const related = [{ message: `${text} is announced here`, source: source2 }];
        return [{ ...problemAt("clef-change-at-head", spot, slots, [fix]), related }];
      });
    })
  )
);

// server/score/walk.ts
var barOf = (piece, system, bar) => {
  const found = piece.bars[system.firstBar + bar];
  if (found === void 0) throw new RangeError(`no bar ${bar} in system ${system.ordinal}`);
  return found;
};
function* eventsOf(piece) {
  for (const system of piece.systems) {
    for (const voice of system.score.voices) {
      for (const [index, event2] of voice.events.entries()) {
        yield {
          event: event2,
          system,
          voice,
          index,
          onset: add(system.onset, event2.onset),
          bar: barOf(piece, system, event2.bar)
        };
      }
    }
  }
}

// server/checks/compass.ts
var letters = ["c", "c#", "d", "eb", "e", "f", "f#", "g", "g#", "a", "bb", "b"];
var keyName = (midi) => `${letters[midi % 12] ?? ""}${Math.floor(midi / 12) - 1}`;
var signs2 = ["bb", "b", "", "#", "##"];
var noteName = ({ spelling: spelling2, alteration, octave }) => `${spelling2.letter}${signs2[alteration + 2] ?? ""}${octave}`;
var outsideCompass = check("outside-compass", ["environment", "score"], ({ environment, score }) => {
  const { compass } = environment;
  if (compass === void 0) return [];
  const [low, high] = [keyName(compass.low), keyName(compass.high)];
  const isBeyond = ({ midi, tiedFrom }) => !tiedFrom && (midi < compass.low || midi > compass.high);
  return score.pieces.flatMap(
    (piece) => [...eventsOf(piece)].flatMap(
      ({ event: event2, system }) => event2.members.filter(isBeyond).map((member2) => {
        const voice = environment.voices[event2.voice]?.name ?? "";
        const spot = { ...member2.source, block: system.block };
        return problemAt("outside-compass", spot, { voice, note: noteName(member2), low, high });
      })
    )
  );
});

// grammar/vocabulary/shapes.ts
var shapes = [
  // ─── zigzags and wavy lines ────────────────────────────────────────────────────────────────────────────────────────
  {
    name: "zigzag",
    short: "zz",
    description: "a short zigzag",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentShortTrill",
    codepoint: 58732,
    musicxml: "inverted-mordent"
  },
  {
    name: "zigzag_long",
    short: "zzz",
    description: "a long zigzag, of three teeth or more",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentTremblement",
    codepoint: 58734,
    musicxml: "inverted-mordent",
    musicxmlAttributes: { long: "yes" }
  },
  {
    name: "zigzag_stroke",
    short: "zs",
    description: "a short zigzag crossed by an upright stroke",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentMordent",
    codepoint: 58733,
    musicxml: "mordent"
  },
  {
    name: "zigzag_long_stroke",
    short: "zzs",
    description: "a long zigzag crossed by an upright stroke",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentPrecompTrillWithMordent",
    codepoint: 58813,
    musicxml: "mordent",
    musicxmlAttributes: { long: "yes" }
  },
  {
    name: "wavy_line",
    short: "wl",
    description: "a wavy line drawn out as far as the note lasts",
    place: "above",
    drawnFor: "note",
    glyph: "wiggleTrill",
    codepoint: 60068,
    musicxml: "wavy-line"
  },
  {
    name: "wavy_line_stroke",
    short: "wls",
    description: "a wavy line drawn out as far as the note lasts, crossed by an upright stroke near its beginning",
    place: "above",
    drawnFor: "note",
    nearest: "ornamentPrecompTrillWithMordent",
    musicxml: "other-ornament"
  },
  {
    name: "zigzag_left_stroke",
    short: "zl",
    description: "a zigzag with a small stroke, upright or oblique, at its left end",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentPrecompAppoggTrill",
    codepoint: 58802,
    musicxml: "other-ornament"
  },
  {
    name: "zigzag_hook_below",
    short: "zhb",
    description: "a zigzag whose left end is a curved hook hanging below it",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentPrecompSlideTrillDAnglebert",
    codepoint: 58805,
    musicxml: "inverted-mordent",
    musicxmlAttributes: { approach: "below" }
  },
  {
    name: "zigzag_hook_above",
    short: "zha",
    description: "a zigzag whose left end is a curved hook rising above it",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentPrecompTurnTrillDAnglebert",
    codepoint: 58804,
    musicxml: "inverted-mordent",
    musicxmlAttributes: { approach: "above" }
  },
  {
    name: "zigzag_curl",
    short: "zr",
    description: "a zigzag whose right end is a hook curling upwards",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentPrecompTrillSuffixDandrieu",
    codepoint: 58811,
    musicxml: "inverted-mordent",
    musicxmlAttributes: { departure: "above" }
  },
  {
    name: "zigzag_hook_curl",
    short: "zhbr",
    description: "a zigzag with a hook hanging below its left end and one curling upwards at its right",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentPrecompSlideTrillMarpurg",
    codepoint: 58806,
    musicxml: "inverted-mordent",
    musicxmlAttributes: { approach: "below", departure: "above" }
  },
  {
    name: "zigzag_sweep",
    short: "zu",
    description: "a zigzag with a long thin line sweeping up into its left end and another sweeping up out of its right",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentPrecompSlideTrillMuffat",
    codepoint: 58809,
    musicxml: "other-ornament"
  },
  {
    name: "zigzag_sweep_curl",
    short: "zur",
    description: "a zigzag with a long thin line sweeping up into its left end and a hook curling upwards at its right",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentPrecompSlideTrillSuffixMuffat",
    codepoint: 58810,
    musicxml: "other-ornament"
  },
  {
    name: "zigzag_comma",
    short: "zc",
    description: "a zigzag with a comma or closing half-circle directly to its right",
    place: "above",
    drawnFor: "note",
    nearest: "ornamentPrecompTrillSuffixDandrieu",
    musicxml: "other-ornament"
  },
  {
    name: "arch_zigzag_stroke",
    short: "azs",
    description: "a zigzag crossed by an upright stroke, with a small arch at its left end",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentPrecompPortDeVoixMordent",
    codepoint: 58812,
    musicxml: "other-ornament"
  },
  {
    name: "wave_slope",
    short: "ws",
    description: "a small wave or zigzag running out into a line that slopes upwards",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentSchleifer",
    codepoint: 58759,
    musicxml: "schleifer"
  },
  // ─── reclining and upright s ───────────────────────────────────────────────────────────────────────────────────────
  {
    name: "reclining_s",
    short: "turn",
    description: "an s lying on its side, going up, then down",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentTurn",
    codepoint: 58727,
    musicxml: "turn"
  },
  {
    name: "reclining_s_reversed",
    short: "turni",
    description: "an s lying on its side, going down, then up",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentTurnInverted",
    codepoint: 58728,
    musicxml: "inverted-turn"
  },
  {
    name: "reclining_s_stroke",
    short: "turns",
    description: "an s lying on its side, going up, then down, crossed by an upright stroke",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentTurnSlash",
    codepoint: 58729,
    musicxml: "turn",
    musicxmlAttributes: { slash: "yes" }
  },
  {
    name: "upright_s",
    short: "turnu",
    description: "an s standing upright",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentTurnUpS",
    codepoint: 58731,
    musicxml: "inverted-vertical-turn"
  },
  {
    name: "upright_s_reversed",
    short: "turnv",
    description: "an s standing upright in mirror writing",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentTurnUp",
    codepoint: 58730,
    musicxml: "vertical-turn"
  },
  {
    name: "turn_zigzag_below",
    short: "tzb",
    description: "an s lying on its side, then over the next note a zigzag with a hook hanging below its left end",
    place: "above",
    drawnFor: "note",
    nearest: "ornamentTurn",
    musicxml: "other-ornament"
  },
  {
    name: "turn_zigzag_above",
    short: "tza",
    description: "an s lying on its side, then over the next note a zigzag with a hook rising above its left end",
    place: "above",
    drawnFor: "note",
    nearest: "ornamentTurn",
    musicxml: "other-ornament"
  },
  // ─── commas, half-circles, curves ──────────────────────────────────────────────────────────────────────────────────
  {
    name: "comma_before",
    short: "cb",
    description: "a comma or opening half-circle to the left of the note",
    place: "before",
    drawnFor: "note",
    glyph: "ornamentRightFacingHalfCircle",
    codepoint: 58737,
    musicxml: "other-ornament"
  },
  {
    name: "comma_after",
    short: "ca",
    description: "a comma or closing half-circle to the right of the note",
    place: "after",
    drawnFor: "note",
    glyph: "ornamentLeftFacingHalfCircle",
    codepoint: 58738,
    musicxml: "other-ornament"
  },
  {
    name: "comma_after_long",
    short: "lca",
    description: "a comma or closing half-circle to the right of the note, drawn longer than usual",
    place: "after",
    drawnFor: "note",
    nearest: "ornamentLeftFacingHook",
    musicxml: "other-ornament"
  },
  {
    name: "tall_curve_before",
    short: "tcb",
    description: "an upright curve to the left of two notes a third apart, as tall as both",
    place: "before",
    drawnFor: "chord",
    glyph: "ornamentRightFacingHalfCircle",
    codepoint: 58737,
    musicxml: "other-ornament"
  },
  {
    name: "tall_curve_after",
    short: "tca",
    description: "an upright curve to the right of two notes a third apart, as tall as both",
    place: "after",
    drawnFor: "chord",
    glyph: "ornamentLeftFacingHalfCircle",
    codepoint: 58738,
    musicxml: "other-ornament"
  },
  {
    name: "two_curves_before",
    short: "ccb",
    description: "two small curves, one behind the other, to the left of the note",
    place: "before",
    drawnFor: "note",
    nearest: "ornamentPrecompSlide",
    musicxml: "other-ornament"
  },
  {
    name: "half_circle_in_chord",
    short: "hc",
    description: "a small half-circle among the notes of a chord, beside one of them",
    place: "beside",
    drawnFor: "note",
    nearest: "ornamentRightFacingHalfCircle",
    musicxml: "other-ornament"
  },
  {
    name: "curve_joining",
    short: "cj",
    description: "a curve or slanting mark joining two successive notes a third apart",
    place: "between",
    drawnFor: "note",
    glyph: "ornamentUpCurve",
    codepoint: 58743,
    musicxml: "other-ornament"
  },
  {
    name: "arch_small",
    short: "arch",
    description: "a small arch",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentUpCurve",
    codepoint: 58743,
    musicxml: "other-ornament"
  },
  {
    name: "arch_upright",
    short: "archs",
    description: "a small arch with a short upright stroke",
    place: "above",
    drawnFor: "note",
    nearest: "ornamentUpCurve",
    musicxml: "other-ornament"
  },
  // ─── strokes and crosses ───────────────────────────────────────────────────────────────────────────────────────────
  {
    name: "one_stroke",
    short: "s",
    description: "one oblique stroke through the stem, or above or below a head without stem",
    place: "stem",
    drawnFor: "note",
    glyph: "ornamentObliqueLineBeforeNote",
    codepoint: 58747,
    musicxml: "other-ornament"
  },
  {
    name: "two_strokes",
    short: "ss",
    description: "two oblique strokes through the stem, or above or below a head without stem",
    place: "stem",
    drawnFor: "note",
    glyph: "ornamentDoubleObliqueLinesBeforeNote",
    codepoint: 58749,
    musicxml: "other-ornament"
  },
  {
    name: "stroke_before_rising",
    short: "sbu",
    description: "one short stroke to the left of the note, rising to it",
    place: "before",
    drawnFor: "note",
    glyph: "ornamentShortObliqueLineBeforeNote",
    codepoint: 58745,
    musicxml: "other-ornament"
  },
  {
    name: "stroke_before_falling",
    short: "sbd",
    description: "one short stroke to the left of the note, falling to it",
    place: "before",
    drawnFor: "note",
    glyph: "ornamentShortObliqueLineAfterNote",
    codepoint: 58746,
    musicxml: "other-ornament"
  },
  {
    name: "stroke_after",
    short: "sa",
    description: "a small stroke, upright or slanting, to the right of the note",
    place: "after",
    drawnFor: "note",
    glyph: "ornamentVerticalLine",
    codepoint: 58755,
    musicxml: "other-ornament"
  },
  {
    name: "stroke_third_rising",
    short: "stu",
    description: "a slanting stroke, rising from left to right, between the two notes of a third",
    place: "between",
    drawnFor: "chord",
    glyph: "ornamentObliqueLineBeforeNote",
    codepoint: 58747,
    musicxml: "other-ornament"
  },
  {
    name: "stroke_third_falling",
    short: "std",
    description: "a slanting stroke, falling from left to right, between the two notes of a third",
    place: "between",
    drawnFor: "chord",
    glyph: "ornamentObliqueLineAfterNote",
    codepoint: 58748,
    musicxml: "other-ornament"
  },
  {
    name: "stroke_chord_rising",
    short: "scu",
    description: "an oblique stroke, rising from left to right, through the stem of a chord or between its notes",
    place: "stem",
    drawnFor: "chord",
    glyph: "ornamentObliqueLineBeforeNote",
    codepoint: 58747,
    musicxml: "other-ornament"
  },
  {
    name: "stroke_chord_falling",
    short: "scd",
    description: "an oblique stroke, falling from left to right, through the stem of a chord or between its notes",
    place: "stem",
    drawnFor: "chord",
    glyph: "ornamentObliqueLineAfterNote",
    codepoint: 58748,
    musicxml: "other-ornament"
  },
  {
    name: "stroke_chord_extra",
    short: "scs",
    description: "an oblique stroke through the stem of a chord, with a second, smaller stroke",
    place: "stem",
    drawnFor: "chord",
    nearest: "ornamentDoubleObliqueLinesBeforeNote",
    musicxml: "other-ornament"
  },
  {
    name: "dash_upright",
    short: "dash",
    description: "a short upright dash",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentVerticalLine",
    codepoint: 58755,
    musicxml: "spiccato"
  },
  {
    name: "dashes_two",
    short: "dashes",
    description: "two upright dashes side by side",
    place: "above",
    drawnFor: "note",
    nearest: "ornamentDoubleObliqueLinesBeforeNote",
    musicxml: "other-ornament"
  },
  {
    name: "wedge_upright",
    short: "wedge",
    description: "a short upright wedge, pointing down",
    place: "above",
    drawnFor: "note",
    glyph: "articStaccatissimoWedgeAbove",
    codepoint: 58536,
    musicxml: "staccatissimo"
  },
  {
    name: "cross_upright",
    short: "plus",
    description: "a small cross with one upright and one level arm",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentShake3",
    codepoint: 58754,
    musicxml: "other-ornament"
  },
  {
    name: "cross_oblique",
    short: "x",
    description: "a small cross with both arms oblique",
    place: "above",
    drawnFor: "note",
    nearest: "timeSigMultiply",
    musicxml: "other-ornament"
  },
  // ─── chords ────────────────────────────────────────────────────────────────────────────────────────────────────────
  {
    name: "wavy_upright",
    short: "arp",
    description: "an upright wavy line, as tall as the chord",
    place: "before",
    drawnFor: "chord",
    glyph: "arpeggiato",
    codepoint: 58940,
    musicxml: "arpeggiate"
  },
  {
    name: "wavy_upright_foot",
    short: "arpu",
    description: "an upright wavy line, as tall as the chord, with a hook at its foot",
    place: "before",
    drawnFor: "chord",
    glyph: "arpeggiatoUp",
    codepoint: 58932,
    musicxml: "arpeggiate",
    musicxmlAttributes: { direction: "up" }
  },
  {
    name: "wavy_upright_head",
    short: "arpd",
    description: "an upright wavy line, as tall as the chord, with a hook at its head",
    place: "before",
    drawnFor: "chord",
    glyph: "arpeggiatoDown",
    codepoint: 58933,
    musicxml: "arpeggiate",
    musicxmlAttributes: { direction: "down" }
  },
  // ─── letters, and a link between staves ────────────────────────────────────────────────────────────────────────────
  {
    name: "letter_t",
    short: "t",
    description: "the letter t",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentShakeMuffat1",
    codepoint: 58756,
    musicxml: "other-ornament"
  },
  {
    name: "letter_t_wave",
    short: "tw",
    description: "the letter t followed by a wavy line",
    place: "above",
    drawnFor: "note",
    nearest: "ornamentShakeMuffat1",
    musicxml: "other-ornament"
  },
  {
    name: "letters_tr",
    short: "tr",
    description: "the letters tr",
    place: "above",
    drawnFor: "note",
    glyph: "ornamentTrill",
    codepoint: 58726,
    musicxml: "trill-mark"
  },
  {
    name: "letter_r",
    short: "r",
    description: "the letter R",
    place: "above",
    drawnFor: "note",
    musicxml: "other-ornament"
  },
  {
    name: "staves_link",
    short: "link",
    description: "a line that joins two notes standing on two staves",
    place: "between",
    drawnFor: "note",
    musicxml: "other-ornament"
  }
];
var byName = new Map(
  shapes.flatMap((shape) => [
    [shape.name, shape],
    [shape.short, shape]
  ])
);

// grammar/vocabulary/signTables.ts
var row2 = (name3, shapes2, label3, status, note) => ({
  name: name3,
  shapes: shapes2,
  label: label3,
  status,
  ...note === void 0 ? {} : { note }
});
var letterCameLater = "The book draws no sign; the letter came into use later.";
var letterBorrowed = "The book is not known to draw a sign; the letter is borrowed from later sources.";
var lettersCommon = "The letters are common practice; the book's own sign is not recorded.";
var zigzagCommon = "The zigzag is common practice; the book's own sign is not recorded.";
var signTables = [
  {
    table: "santa-maria-1565",
    title: "Santa Mar\xEDa, 1565",
    rows: [
      row2("quiebro", ["t"], "Quiebro", "doubtful", letterBorrowed),
      row2("quiebro_reiterado", ["t"], "Quiebro reiterado", "doubtful", letterBorrowed),
      row2("quiebro_senzillo", ["t"], "Quiebro senzillo", "doubtful", letterBorrowed),
      row2("redoble", ["r"], "Redoble", "doubtful", letterBorrowed)
    ]
  },
  {
    table: "english-strokes",
    title: "The strokes of English virginal music, about 1570 to 1650",
    rows: [
      row2("single_stroke", ["s"], "Single stroke", "memory"),
      row2("double_stroke", ["ss"], "Double stroke", "memory")
    ]
  },
  {
    table: "diruta-1593",
    title: "Diruta, Il Transilvano, 1593",
    rows: [
      row2("tremolo", ["t"], "Tremolo", "memory", letterCameLater),
      row2("tremoletto", ["t"], "Tremoletto", "memory", letterCameLater)
    ]
  },
  {
    table: "correa-1626",
    title: "Correa, 1626",
    rows: [
      row2("quiebro_senzillo", ["t"], "Quiebro senzillo", "doubtful", letterBorrowed),
      row2("quiebro_reiterado", ["t"], "Quiebro reiterado", "doubtful", letterBorrowed),
      row2("redoble_senzillo", ["r"], "Redoble senzillo", "likely"),
      row2("redoble_reiterado", ["r"], "Redoble reiterado", "likely")
    ]
  },
  {
    table: "chambonnieres-1670",
    title: "Chambonni\xE8res, Pi\xE8ces de clavessin, 1670",
    rows: [
      row2("cadence", ["zz"], "Cadence", "memory"),
      row2("pincement", ["zs"], "Pincement", "likely"),
      row2("double_cadence", ["turn"], "Double cadence", "confirmed"),
      row2("port_de_voix", ["plus"], "Port de voix", "likely"),
      row2("coule", ["stu"], "Coul\xE9", "memory"),
      row2("harpegement", ["arpu"], "Harp\xE8gement", "likely"),
      row2("harpegement_autre", ["arpd"], "Harp\xE8gement, autre", "likely")
    ]
  },
  {
    table: "anglebert-1689",
    title: "J.-H. d'Anglebert, Pi\xE8ces de clavecin, Paris 1689",
    rows: [
      row2("tremblement_simple", ["zz"], "Tremblement simple", "memory"),
      row2("tremblement_appuye", ["zl"], "Tremblement appuy\xE9", "memory"),
      row2("cadence", ["zhb"], "Cadence", "likely"),
      row2("cadence_autre", ["zha"], "Cadence, autre", "likely"),
      row2("double_cadence", ["tzb"], "Double cadence", "likely"),
      row2("double_cadence_autre", ["tza"], "Double cadence, autre", "doubtful"),
      row2("double_cadence_sans_tremblement", ["turn"], "Double cadence sans tremblement", "confirmed"),
      row2("double_cadence_sur_une_tierce", ["turn"], "Double cadence sur une tierce", "doubtful"),
      row2("pince", ["ca"], "Pinc\xE9", "memory"),
      row2("pince_autre", ["lca"], "Pinc\xE9, autre", "likely"),
      row2("tremblement_et_pince", ["zc"], "Tremblement et pinc\xE9", "confirmed"),
      row2("cheute", ["cb"], "Cheute ou port de voix", "memory"),
      row2("port_de_voix", ["cb"], "Cheute ou port de voix", "memory"),
      row2("cheute_et_pince", ["cb", "ca"], "Cheute et pinc\xE9", "memory"),
      row2("coule_sur_une_tierce", ["tcb"], "Coul\xE9 sur une tierce", "confirmed"),
      row2("coule_sur_une_tierce_autre", ["tca"], "Coul\xE9 sur une tierce, autre", "confirmed"),
      row2("coule_sur_2_notes_de_suite", ["cj"], "Coul\xE9 sur 2 notes de suite", "confirmed"),
      row2("arpege", ["scu"], "Arp\xE9g\xE9", "memory"),
      row2("arpege_autre", ["scd"], "Arp\xE9g\xE9, autre", "memory"),
      row2("cheute_sur_une_notte", ["hc"], "Cheute sur une notte", "likely"),
      row2("cheute_sur_2_nottes", ["hc"], "Cheute sur 2 nottes", "likely"),
      row2("double_cheute_a_une_tierce", ["ccb"], "Double cheute \xE0 une tierce", "likely"),
      row2("double_cheute_a_une_notte_seule", ["ccb"], "Double cheute \xE0 une notte seule", "likely"),
      row2("detache_avant_un_tremblement", ["dash"], "D\xE9tach\xE9 avant un tremblement", "confirmed"),
      row2("detache_avant_un_pince", ["dash"], "D\xE9tach\xE9 avant un pinc\xE9", "confirmed")
    ]
  },
  {
    table: "muffat-1690",
    title: "Georg Muffat, Apparatus musico-organisticus, 1690",
    rows: [
      row2("trill", ["t"], "Trill", "doubtful"),
      row2("trill_with_suffix", ["tw"], "Trill with suffix", "doubtful"),
      row2("mordent", ["zs"], "Mordent", "doubtful")
    ]
  },
  {
    table: "purcell-1696",
    title: "Purcell, A Choice Collection of Lessons, 1696",
    rows: [
      row2("shake", ["ss"], "Shake", "likely"),
      row2("beat", ["zz"], "Beat", "likely"),
      row2("plain_note_and_shake", ["sbd", "ss"], "Plain note and shake", "likely"),
      row2("fore_fall", ["sbu"], "Fore-fall", "likely"),
      row2("back_fall", ["sbd"], "Back-fall", "likely"),
      row2("mark_for_the_turn", ["turn"], "Mark for the turn", "likely"),
      row2("shake_turned", ["ss", "turn"], "Shake turned", "likely"),
      row2("slur", ["cj"], "Slur", "likely"),
      row2("battery", ["arp"], "Battery", "likely")
    ]
  },
  {
    table: "le-roux-1705",
    title: "Le Roux, 1705",
    // Its "séparez" has no row: how that sign looks is not recorded.
    from: "anglebert-1689",
    rows: []
  },
  {
    table: "couperin-1713",
    title: "Fran\xE7ois Couperin, Pi\xE8ces de clavecin I, 1713",
    rows: [
      row2("pince", ["zs"], "Pinc\xE9", "memory"),
      row2("pince_simple", ["zs"], "Pinc\xE9 simple", "memory"),
      row2("pince_double", ["zzs"], "Pinc\xE9 double", "memory"),
      row2("pince_continu", ["wls"], "Pinc\xE9 continu", "memory"),
      row2("tremblement_appuye_et_lie", ["zz"], "Tremblement appuy\xE9 et li\xE9", "memory"),
      row2("tremblement_ouvert", ["zz"], "Tremblement ouvert", "likely"),
      row2("tremblement_ferme", ["zz"], "Tremblement ferm\xE9", "likely"),
      row2("tremblement_lie_sans_etre_appuye", ["zz"], "Tremblement li\xE9 sans \xEAtre appuy\xE9", "likely"),
      row2("tremblement_detache", ["zz"], "Tremblement d\xE9tach\xE9", "memory"),
      row2("tremblement_continu", ["wl"], "Tremblement continu", "memory"),
      row2("trill_with_turn_above", ["zz", "turn"], "Trill with a turn sign above", "confirmed"),
      row2("accent", ["sa"], "Accent", "memory"),
      row2("arpegement_en_montant", ["arpu"], "Arp\xE8gement, en montant", "memory"),
      row2("arpegement_en_descendant", ["arpd"], "Arp\xE8gement, en descendant", "memory"),
      row2("tierce_coulee_en_montant", ["stu"], "Tierce coul\xE9e, en montant", "memory"),
      row2("tierce_coulee_en_descendant", ["std"], "Tierce coul\xE9e, en descendant", "memory"),
      row2("aspiration", ["wedge"], "Aspiration", "confirmed"),
      row2("suspension", ["archs"], "Suspension", "confirmed"),
      row2("double", ["turn"], "Doubl\xE9", "memory"),
      row2("unisson", ["link"], "Unisson", "likely")
    ]
  },
  {
    table: "rameau-1724",
    title: "Rameau, Pi\xE8ces de clavessin, 1724",
    rows: [
      row2("cadence", ["zzz"], "Cadence", "memory"),
      row2("cadence_appuyee", ["zl"], "Cadence appuy\xE9e", "memory"),
      row2("double_cadence", ["zr"], "Double cadence", "confirmed"),
      row2("double", ["turn"], "Doubl\xE9", "confirmed"),
      row2("pince", ["ca"], "Pinc\xE9", "memory"),
      row2("port_de_voix", ["cb"], "Port de voix", "memory"),
      row2("coulez", ["cb"], "Coulez", "memory"),
      row2("pince_et_port_de_voix", ["cb", "ca"], "Pinc\xE9 et port de voix", "memory"),
      row2("son_coupe", ["dash"], "Son coup\xE9", "memory"),
      row2("suspension", ["arch"], "Suspension", "memory"),
      row2("arpegement_simple", ["scu"], "Arp\xE8gement simple", "memory"),
      row2("arpegement_figure", ["scs"], "Arp\xE8gement figur\xE9", "memory")
    ]
  },
  {
    table: "dandrieu-1724",
    title: "Dandrieu, 1724",
    rows: [
      row2("trill_with_suffix", ["zr"], "Trill with two-note suffix", "confirmed"),
      row2("port_de_voix_and_mordent", ["azs"], "Port de voix followed by multiple mordent", "confirmed")
    ]
  },
  {
    table: "muffat-1739",
    title: "Gottlieb Muffat, Componimenti, 1739",
    rows: [
      row2("trill", ["t"], "Trill", "likely"),
      row2("trill_from_below", ["zu"], "Trill from below", "likely"),
      row2("trill_from_below_with_suffix", ["zur"], "Trill from below with suffix", "likely")
    ]
  },
  {
    table: "quantz-1752",
    title: "Quantz, Versuch, 1752",
    rows: [row2("trill", ["tr"], "Trill", "likely", lettersCommon)]
  },
  {
    table: "marpurg-1755",
    title: "Marpurg, 1755",
    rows: [
      row2("trill", ["tr"], "Trill", "likely", lettersCommon),
      row2("slide_trill_with_suffix", ["zhbr"], "Slide-trill with one-note suffix", "confirmed")
    ]
  },
  {
    table: "turk-1789",
    title: "D. G. T\xFCrk, Klavierschule, 1789",
    rows: [row2("trill", ["tr"], "Trill", "likely", lettersCommon)]
  },
  {
    table: "clementi-1801",
    title: "Clementi, 1801",
    rows: [
      row2("shake", ["tr"], "Shake", "likely", lettersCommon),
      row2("short_shake", ["zz"], "Short shake", "doubtful", zigzagCommon)
    ]
  }
];
var byTable = new Map(signTables.map((each) => [each.table, each]));
function rowsWithInherited(table) {
  const base = table.from === void 0 ? void 0 : byTable.get(table.from);
  if (base === void 0) return table.rows;
  const own = new Set(table.rows.map((each) => each.name));
  return [...table.rows, ...rowsWithInherited(base).filter((each) => !own.has(each.name))];
}
function collectNames() {
  const names2 = /* @__PURE__ */ new Map();
  for (const table of signTables) {
    for (const { name: name3, shapes: shapes2 } of rowsWithInherited(table)) {
      const uses = names2.get(name3) ?? [];
      uses.push({ table: table.table, shapes: shapes2 });
      names2.set(name3, uses);
    }
  }
  return names2;
}
var byRowName = collectNames();

// server/score/declare.ts
var builtInTables = signTables.map(({ table }) => table);
var shapeNames = shapes.flatMap(({ name: name3, short }) => [short, name3]);

// server/score/environment.ts
var declaredNames = (environment) => ({
  staves: environment.staves.map((stave) => stave.name),
  voices: environment.voices.map((voice) => voice.name),
  witnesses: environment.sources.map((source2) => source2.name),
  layers: environment.sources.flatMap((source2) => source2.hands.map((hand) => `${source2.name}.${hand.layer}`)),
  readings: environment.readings.map((reading) => reading.name),
  notes: [...environment.notes.keys()],
  editors: [...environment.editors.keys()],
  tables: environment.tables.map((table) => table.name)
});

// server/score/choice.ts
var written = (accidentals3) => ({
  name: "written",
  at: /* @__PURE__ */ new Map(),
  labels: [],
  accidentals: accidentals3
});
var labelText = (label3) => label3.layer === void 0 ? label3.name : `${label3.name}.${label3.layer}`;

// server/checks/uses.ts
var nothingSaid = () => ({ cited: [], places: [], sections: [], moves: false });
var LaneNames = class {
  constructor(text) {
    this.text = text;
  }
  text;
  said = nothingSaid();
  cite(kind, name3, pos) {
    this.said.cited.push({ kind, name: name3, pos, len: name3.length });
  }
  /** The names after the colon with which a sign ends. */
  limits(readings2, end) {
    const names2 = readings2?.names ?? [];
    let pos = end - names2.join(",").length;
    for (const name3 of names2) {
      this.cite("limit", name3, pos);
      pos += name3.length + 1;
    }
  }
  tie(tie2, from2) {
    if (tie2?.readings === void 0) return;
    this.limits(tie2.readings, this.text.indexOf(tie2.text, from2) + tie2.text.length);
  }
  suffixes(list) {
    for (const suffix2 of list) {
      if (suffix2.kind === "mark") this.limits(suffix2.form.readings, suffix2.pos + suffix2.form.text.length);
      else if (suffix2.ref !== void 0) this.cite("note", suffix2.ref, suffix2.pos + "*".length);
    }
  }
  items(items2) {
    for (const item2 of items2) this.item(item2);
  }
  item(item2) {
    switch (item2.kind) {
      case "event":
        this.tie(item2.tie, item2.pos);
        this.suffixes(item2.suffixes);
        for (const member2 of item2.members) {
          this.tie(member2.tie, member2.pos);
          this.suffixes(member2.suffixes);
          if (member2.stave !== void 0) this.said.moves = true;
        }
        break;
      case "span":
        this.limits(item2.head.readings, item2.pos + item2.head.text.length);
        this.items(item2.items);
        this.suffixes(item2.suffixes);
        break;
      case "options":
        this.options(item2);
        break;
      case "barline":
        this.suffixes(item2.suffixes);
        break;
      case "change":
        this.change(item2);
        break;
    }
  }
  options(item2) {
    if (item2.place !== void 0) this.said.places.push(item2.place.text);
    this.suffixes(item2.reasons);
    for (const option of item2.options) {
      for (const label3 of option.labels) this.cite("option", labelText(label3), label3.pos);
      this.items(option.items);
    }
    this.suffixes(item2.suffixes);
  }
  change({ change, pos }) {
    const name3 = firstOf(change.args, "name");
    if (change.word === "up" || change.word === "down") this.said.moves = true;
    if (name3 === void 0) return;
    if (change.word === "manual") this.cite("manual", name3.text, pos + name3.pos);
    if (change.word === "section") this.said.sections.push(name3.text);
  }
};
function saidInLane(tree) {
  const names2 = new LaneNames(tree.text);
  names2.suffixes(tree.opening.suffixes);
  names2.suffixes(tree.opening.again?.suffixes ?? []);
  for (const segment of tree.segments) {
    names2.items(segment.items);
    names2.suffixes(segment.bar?.suffixes ?? []);
  }
  return names2.said;
}
var cited2 = (kind, names2) => names2.flatMap((name3) => name3 === void 0 ? [] : [{ kind, name: name3.text, pos: name3.pos, len: name3.len }]);
var nameAfter = (args, word) => {
  const arg = afterWord2(args, word);
  return arg?.kind === "name" ? arg : void 0;
};
var citedInPractice = (args) => [
  ...cited2("section", [nameAfter(args, "in")]),
  ...cited2("voice", [nameAfter(args, "voice")])
];
function citedIn({ keyword, args, ...holder }) {
  const argsOf = (clause) => clausesOf(holder, clause).map((one) => one.args);
  switch (keyword) {
    case "link":
      return cited2("place", allOf(args, "name"));
    case "practice":
      return citedInPractice(args);
    case "note":
      return argsOf("by").flatMap((by) => cited2("editor", allOf(by, "name")));
    case "reading":
      return [
        ...argsOf("practice").flatMap(citedInPractice),
        ...argsOf("order").flatMap((order2) => cited2("section", allOf(order2, "name"))),
        ...argsOf("takes").flatMap((takes) => allOf(takes, "names").flatMap(({ names: names2 }) => cited2("taken", names2))),
        ...argsOf("at").flatMap((at) => {
          const [place, label3] = allOf(at, "name");
          return [...cited2("place", [place]), ...cited2("taken", [label3])];
        })
      ];
    default:
      return [];
  }
}
function saidInStatement({ statement }) {
  const section = statement.keyword === "section" ? firstOf(statement.args, "name")?.text : void 0;
  return { ...nothingSaid(), cited: citedIn(statement), sections: section === void 0 ? [] : [section] };
}
function keeping(make) {
  const kept2 = /* @__PURE__ */ new WeakMap();
  return (tree) => {
    const made = kept2.get(tree) ?? make(tree);
    kept2.set(tree, made);
    return made;
  };
}
var laneSaid = keeping(saidInLane);
var statementSaid = keeping(saidInStatement);
var citedBefore = ({ lanes }) => lanes.filter(({ tree }) => tree.kind === "lane").flatMap(({ name: name3, witness }) => [
  { kind: "lane", name: name3.text, pos: name3.pos, len: name3.text.length },
  ...witness === void 0 ? [] : [{ kind: "witness", name: witness.text, pos: witness.pos, len: witness.text.length }]
]);
function readUses(tree) {
  const all = [];
  const said = [];
  const take = (one, at) => {
    said.push(one);
    for (const use of one.cited) all.push({ ...use, ...at });
  };
  tree.blocks.forEach((block, index) => {
    block.statements.forEach((placed, statement) => {
      take(statementSaid(placed.tree), { block: index, statement });
    });
    block.lanes.forEach((placed, lane) => {
      take(laneSaid(placed.tree), { block: index, lane });
    });
    for (const use of citedBefore(block)) all.push({ ...use, block: index });
  });
  return {
    all,
    places: new Set(said.flatMap((one) => one.places)),
    sections: new Set(said.flatMap((one) => one.sections)),
    moves: said.some((one) => one.moves)
  };
}
var usesIn = keeping(readUses);

// server/checks/names.ts
var codes = {
  option: "unknown-label",
  limit: "unknown-label",
  note: "unknown-note",
  manual: "unknown-manual",
  place: "unknown-place",
  section: "unknown-section"
};
var manualsOf = ({ statements: statements2 }) => statements2.flatMap(({ statement }) => statement.rows.filter((row3) => row3.kind === "manual")).flatMap((row3) => firstOf(row3.args, "name")?.text ?? []);
function knownNames(environment, uses) {
  const { witnesses, layers, readings: readings2, notes } = declaredNames(environment);
  const labels2 = [...witnesses, ...layers, ...readings2];
  return {
    option: /* @__PURE__ */ new Set([...labels2, "sic", "corr"]),
    limit: /* @__PURE__ */ new Set([...labels2, "written"]),
    note: new Set(notes),
    manual: new Set(manualsOf(environment)),
    place: uses.places,
    section: uses.sections
  };
}
var listed2 = (names2) => [...names2].join(", ") || "none";
var unknownNames = check("unknown-names", ["tree", "environment"], ({ tree, environment }) => {
  const uses = usesIn(tree);
  const known = knownNames(environment, uses);
  return uses.all.flatMap((use) => {
    const [code, names2] = [codes[use.kind], known[use.kind]];
    if (code === void 0 || names2 === void 0 || names2.has(use.name)) return [];
    const slots = { name: use.name, known: listed2(names2) };
    return [problemAt(code, use, slots, nameInstead(use.name, use, names2))];
  });
});

// server/checks/unused.ts
var cites = ["option", "limit", "taken", "witness"];
var unusedStaves = ({ staves, voices }, uses) => staves.filter((_, index) => !uses.moves && !voices.some((voice) => voice.stave === index)).map((stave) => ({ what: "stave", name: stave.name, declared: stave }));
var handsOf = ({ statements: statements2 }) => statements2.flatMap(({ statement, declared: declared2 }) => {
  const name3 = statement.keyword === "hand" ? firstOf(statement.args, "name") : void 0;
  return name3 === void 0 ? [] : [{ what: "hand", name: name3.text, declared: declared2 }];
});
var unusedDeclarations = check("unused-declarations", ["tree", "environment"], ({ tree, environment }) => {
  if (!tree.blocks.some((block) => block.lanes.length > 0)) return [];
  const uses = usesIn(tree);
  const used = (kinds) => new Set(uses.all.filter((use) => kinds.includes(use.kind)).map((use) => use.name));
  const [labels2, lanes, notes, editors] = [used(cites), used(["lane"]), used(["note"]), used(["editor"])];
  const sources2 = new Set([...labels2].map((label3) => label3.split(".")[0]));
  const unused = [
    ...unusedStaves(environment, uses),
    ...environment.voices.filter(({ name: name3 }) => !lanes.has(name3)).map((voice) => ({ what: "voice", name: voice.name, declared: voice })),
    // The first source is the main text.
    ...environment.sources.slice(1).filter(({ name: name3 }) => !sources2.has(name3)).map((source2) => ({ what: "source", name: source2.name, declared: source2 })),
    ...handsOf(environment).filter(({ name: name3 }) => !labels2.has(name3)),
    ...[...environment.notes].filter(([name3]) => !notes.has(name3)).map(([name3, declared2]) => ({ what: "note", name: name3, declared: declared2 })),
    ...[...environment.editors].filter(([name3]) => !editors.has(name3)).map(([name3, declared2]) => ({ what: "editor", name: name3, declared: declared2 }))
  ];
  return unused.flatMap(
    ({ what, name: name3, declared: { file, pos, len, block, statement } }) => (
      // What an include brings is for many files.
      file === void 0 ? [problemAt("unused-declaration", { pos, len, block, statement }, { what, name: name3 })] : []
    )
  );
});

// server/score/beams.ts
var QUAVER = time(1, 8);

// server/score/lane.ts
var halfOpen = valueFormOf("1");

// server/score/system.ts
var FIRST = written("note");

// grammar/findings/entry.ts
var entries = (table) => table;

// grammar/findings/check.ts
var checkFindings = entries({
  "unknown-note": {
    level: "error",
    sentence: 'No note is called \u201C{name}\u201D; `note {name} \u2026 : "text"` would declare it.',
    help: `\`*n7\` cites an annotation that a \`note\` statement writes out. A short remark can stand in the lane itself:
\`c5*"blotted"\`.

Before:

    dessus | 1 c5*n7 |||

After:

    note n7 : "the head is blotted"
    \u2026
    dessus | 1 c5*n7 |||`
  },
  "unknown-manual": {
    level: "error",
    sentence: "The instrument has no manual called \u201C{name}\u201D; declared: {known}.",
    help: `\`(manual upper)\` names a manual that a row of \`instrument\` declares.

Before:

    instrument harpsichord
    \u2026
    dessus | (manual upper) 1 c5 |||

After:

    instrument harpsichord
      manual upper stops 8
      manual lower stops 8 4
    \u2026
    dessus | (manual upper) 1 c5 |||`
  },
  "unknown-place": {
    level: "error",
    sentence: "No options bear the place name \u201C{name}\u201D; places named: {known}.",
    help: `A place is named where its options stand. A reading decides about it by \`at v3 takes L\`, and \`link v3 v9\` joins two
places.

Before:

    reading late
      at v3 takes L
    \u2026
    dessus | <K: 1 c5 ; L: 1 e5> |||

After:

    reading late
      at v3 takes L
    \u2026
    dessus | <v3 K: 1 c5 ; L: 1 e5> |||`
  },
  "unused-declaration": {
    level: "info",
    sentence: "The {what} \u201C{name}\u201D is declared but never used.",
    help: `Nothing in the file cites this name: a stave bears no voice, a voice has no lane, and no option, witness lane, sign or
reading names the source or hand. It may be left over, or its use misspelt. The first \`source\` is the main text and needs no
citation; what an included file brings may wait for another file.

    note n7 : "the head is blotted"
    \u2026
    dessus | 1 c5 |||      // the note cites nothing: c5*n7`
  },
  "outside-compass": {
    level: "warning",
    sentence: "{voice}: {note} lies outside the compass {low} to {high} of the instrument.",
    help: `The compass names the lowest and the highest key. A note beyond it is a slip of the octave or of the clef, or the
instrument is another one.

    instrument harpsichord  compass c2-c6
    \u2026
    basse | 2 g1 c2 |||    // g1 has no key: g2, or compass g1-c6`
  },
  "clef-change-at-head": {
    level: "hint",
    sentence: "Stave {stave} begins this system with {head}, but the end of the system before announces {announced}.",
    help: `A scribe who changes the clef with a new system often draws the new clef at the end of the old one, as a warning. The two
should then be the same; if the source really draws two different ones, the head counts.

Before:

    system  lower F4
      basse | 1 c3 (now C3) |
    system  lower C4
      basse | 1 c4 |||

After:

    system  lower F4
      basse | 1 c3 (now C3) |
    system  lower C3
      basse | 1 c4 |||`
  }
});

// grammar/findings/export.ts
var exportFindings = entries({
  // ── all formats ──
  "export-no-music": {
    level: "error",
    sentence: "There is no bar of music to export.",
    help: `The file holds statements but no system with a lane, so an export would be empty.

A first system:
\`\`\`
voice dessus
system dessus C1 meter C
  dessus | 1 c5 |
\`\`\``
  },
  "export-no-such-bar": {
    level: "error",
    sentence: "No piece has bars {from} to {to}.",
    help: `Bars are named by the trade's numbers: the upbeat is 0, the first whole bar 1, and the halves of a bar that a
repeat parts share a number (8a and 8b). Both numbers must stand in one piece, the first before the last.

The numbers are shown beside the bars in the editor and in \`bentside proof\`.`
  },
  "export-broken-bar": {
    level: "error",
    sentence: "The time of {bars} is wrong, so nothing was exported.",
    help: `A bar in which the voices do not add up to its length, or in which something was not understood, has no certain
time. Every other format needs one, and a guess would look like the source. The other findings in that bar say what
is amiss.

Mend the bar, mark it \`(irregular)\` if the source is so, or export with gaps (\`--leave-gaps\`): then such bars are
left empty.`
  },
  "export-gap-left": {
    level: "warning",
    sentence: "The time of {bars} is wrong; the export has an empty bar there.",
    help: `Export with gaps was asked for, so a bar whose time is wrong or unknown became empty time in all voices. The
other findings in that bar say what is amiss; mend it and export again.`
  },
  "export-characters": {
    level: "warning",
    sentence: "The export cannot hold some characters of the text; the sign \uFFFD stands in their place.",
    help: `XML forbids control characters, such as those that a damaged file or a copied page may bring along. They are
mostly invisible. Look for them in titles, words, annotations and sung text, and take them out.`
  },
  // ── MusicXML: staves, signatures, barlines ──
  "musicxml-two-clefs": {
    level: "info",
    sentence: "MusicXML draws one clef at a time: of {clefs} on the stave {stave} the export has {clef}.",
    help: `The source draws two clefs on one stave that agree about every line, so either is enough to read it. MusicXML
can name a second clef but not the line on which it stands; the export has the lower one. Pitches are not changed.`
  },
  "musicxml-no-clef": {
    level: "info",
    sentence: "The stave {stave} has no clef; the export gives it {clef}.",
    help: `Without a clef a stave cannot be drawn. State the source's clef in the head of the first system:
\`\`\`
system upper C1 lower F4
\`\`\``
  },
  "musicxml-meter-sign": {
    level: "info",
    sentence: "MusicXML cannot draw the meter {sign}; the export has {beats}/{beatValue}.",
    help: `MusicXML draws C, cut C, a single figure and a fraction, and all must say how long a bar is. Another sign, or a
figure whose bar is longer or shorter than it says, is written as the fraction of that length. The bars are not changed.`
  },
  "musicxml-inner-barline": {
    level: "info",
    sentence: "A barline that only {voice} draws is not in the export ({bars}).",
    help: `In a loose system the lanes may draw their barlines at different moments. A measure of MusicXML ends in all
voices at once, so only the barlines that all lanes share are written.`
  },
  "musicxml-repeat-open": {
    level: "info",
    sentence: "The repeat that begins after {bars} is not in the export, for no music follows.",
    help: `The piece ends with a barline that begins a repeat. MusicXML writes such a barline at the start of the next
measure, and there is none. If the source means a repeat of what stands before, it is \`:||\`.`
  },
  "musicxml-break": {
    level: "info",
    sentence: "A system of the source ends inside {bars}; the export breaks after that bar.",
    help: `MusicXML can begin a system with a measure only. The bar is written whole, and the new system or page begins
with the next one.`
  },
  "musicxml-order": {
    level: "info",
    sentence: "The order {order} is not in the export; sections stand as the source writes them.",
    help: `MusicXML knows repeats, endings and jumps, but no list of the sections in their playing order. The section names
are written above the staves, so that a player can follow the order by hand.`
  },
  // ── MusicXML: notes ──
  "musicxml-through": {
    level: "info",
    sentence: "A note or rest of {voice} that crosses a barline is written in parts ({bars}).",
    help: `The source draws one note that sounds on after the barline. In MusicXML a note ends with its measure, so the
export cuts it at the barline into usual values and ties them. Its length is not changed.`
  },
  "musicxml-value": {
    level: "info",
    sentence: "No drawn value has the length of a note or rest of {voice} ({bars}); the export states its length alone.",
    help: `What is left of a note cut at a barline, or of a value in proportion, is too short or too odd for any value that
MusicXML can draw. The length is written exactly; a program that draws the note must choose a shape.`
  },
  "musicxml-ligature": {
    level: "info",
    sentence: "The ligatures of {voice} are written as single notes ({bars}).",
    help: `MusicXML has no ligatures. The notes and their values are kept, the joined shape is not.`
  },
  "musicxml-doubtful": {
    level: "info",
    sentence: "What is doubtful in {voice} ({bars}) stands in the export in a form that few programs show.",
    help: `A reading marked with \`?\` is written with the editorial level \u201Cdoubtful\u201D, a doubtful tie or curve as a dotted
line. Most programs keep neither. Keep this text, or the critical report, beside the export.`
  },
  "musicxml-span": {
    level: "info",
    sentence: "That notes of {voice} are {passage} ({bars}) stands in the export in a form that few programs show.",
    help: `Passages that are unclear, supplied, deleted or added are written with an editorial level of MusicXML. Most
programs read the notes and pass over the level, so that the passage looks like any other.`
  },
  "musicxml-hint": {
    level: "info",
    sentence: "The hint {hint} in {voice} is not in the export ({bars}).",
    help: `Hints of performance (\`overdot\`, \`inegal\`, \`assimilate\`, \`snap\`, \`literal\`) change what is played and not
what is written. The export has what is written. The performance itself can be exported as MIDI.`
  },
  "musicxml-option": {
    level: "info",
    sentence: "Where the sources of {voice} differ ({bars}) the export has only the option {labels}.",
    help: `MusicXML holds one text. The export has the options that its reading takes; the file's field \u201Creading\u201D names it.
Export each reading or witness by itself to have them all.`
  },
  "musicxml-readings": {
    level: "info",
    sentence: "Marks or ties of {voice} that hold for some readings only look like any others in the export ({bars}).",
    help: `A mark such as \`'zz:french\` is written if it holds in the exported reading and left out if not. MusicXML cannot
say that another reading has it otherwise.`
  },
  "musicxml-weight": {
    level: "info",
    sentence: "The editor's weights in {voice} are not in the export ({bars}).",
    help: `A weight (\`'w2\`) says how much a note of an unmeasured system counts. It is no sign of the source, and MusicXML
has no word for it.`
  },
  "musicxml-lacuna": {
    level: "info",
    sentence: "A lacuna of {voice} is empty time in the export ({bars}).",
    help: `What is lost takes time but has no notes. The export moves on by that time, with the editorial level \u201Clost\u201D,
which few programs show; most show nothing at all there.`
  },
  "musicxml-custos": {
    level: "info",
    sentence: "The custodes of {voice} are not in the export ({bars}).",
    help: `MusicXML has no custos, the sign at the end of a system that shows the next note. Nothing is lost for a player,
since the next note is there.`
  },
  "musicxml-figures": {
    level: "info",
    sentence: "Figures of {voice} that stand over nothing drawn are not in the export ({bars}).",
    help: `Figured bass of MusicXML is tied to the note after it. Here the source draws figures where the voice has a gap.`
  },
  // ── MusicXML: marks ──
  "musicxml-editors": {
    level: "info",
    sentence: "The editor's marks in {voice} ({bars}) look like the source's in most programs.",
    help: `An editor's sign, fermata, finger or articulation is written with the editorial level \u201Ceditor's\u201D. MusicXML has
brackets for accidentals but for no other mark, and most programs pass over the level.`
  },
  "musicxml-mark-gap": {
    level: "info",
    sentence: "The mark {mark} of {voice} stands where nothing is drawn and is not in the export ({bars}).",
    help: `In MusicXML a mark belongs to a note or a rest. This one stands at a gap or a lacuna.`
  },
  "musicxml-mark-barline": {
    level: "info",
    sentence: "The mark {mark} on the barline of {bars} is not in the export.",
    help: `On a barline MusicXML can write a fermata, a segno and words. Other marks belong to a note or a rest.`
  },
  "musicxml-parameter": {
    level: "info",
    sentence: "How {sign} is to be played in {voice} is not in the export ({bars}).",
    help: `A sign may say how it is meant, as \`'zz(from main)\` does. The export draws the sign; MusicXML cannot say the rest
for every sign.`
  },
  "musicxml-linked": {
    level: "info",
    sentence: "A sign drawn across several voices stands in the export at {voice} alone ({bars}).",
    help: `The source draws one sign for notes of several lanes. Except an arpeggio, MusicXML keeps each sign at one note;
the other lanes have theirs.`
  },
  "musicxml-line": {
    level: "info",
    sentence: "The straight lines of {voice} are not in the export ({bars}).",
    help: `The lines of unmeasured preludes show which notes belong together or are held. MusicXML's lines between notes mean
a slide or a glissando, so writing them would say something else.`
  },
  "musicxml-curve-open": {
    level: "info",
    sentence: "A curve of {voice} whose other end the source does not show is drawn within its bar in the export ({bars}).",
    help: `A slur of MusicXML needs both ends. One whose end is not shown ends at the last note of its bar in that voice, one
whose beginning is not shown begins at the first.`
  },
  "musicxml-curve-moved": {
    level: "info",
    sentence: "A curve of {voice} that begins or ends where no note stands is drawn to the nearest note ({bars}).",
    help: `In the source the curve stands on a barline, a gap or a lacuna. A slur of MusicXML joins two notes, so it is drawn
to the nearest one inside the curve.`
  },
  "musicxml-curve-left-out": {
    level: "info",
    sentence: "A curve of {voice} finds no two notes to join and is not in the export ({bars}).",
    help: `A slur of MusicXML joins two notes. Between the ends of this curve there is at most one that is exported.`
  },
  "musicxml-curves-many": {
    level: "info",
    sentence: "More than sixteen curves overlap in {bars}; the export has sixteen of them.",
    help: `MusicXML tells overlapping slurs apart by a number from 1 to 16.`
  }
});

// grammar/findings/host.ts
var hostFindings = entries({
  "include-missing": {
    level: "error",
    sentence: "The file \u201C{path}\u201D is not there to be included.",
    help: `An \`include\` names a file with tables, people and sources that several scores share. The path counts from the folder
of the file that includes it.

    include "house.bent"
    include "shared/people.bent"

Look for a slip in the name, or for a file that was moved. Everything that the missing file declares is unknown until it is found.`
  },
  "include-circle": {
    level: "error",
    sentence: "The file \u201C{path}\u201D is being included already: {way}.",
    help: `A file cannot include itself, neither directly nor by way of another:

    // in a.bent
    include "b.bent"
    // in b.bent
    include "a.bent"

The second \`include\` is left out. Put what both need into a third file and include that in both.`
  },
  "include-refused": {
    level: "error",
    sentence: "The file \u201C{path}\u201D is not included: only files below the folder of this file, or of the work in hand, can be.",
    help: `An include stays within the folder of the file that includes it, or within the folder where the work is done. Absolute
paths, paths that climb out with \`..\`, and links that lead elsewhere are refused, so that a score received from somebody
else cannot read other files of the computer.

    include "shared/people.bent"     // below this folder

Copy or move the file into the folder of the score.`
  },
  "include-too-many": {
    level: "error",
    sentence: "The file \u201C{path}\u201D is not included: more than {most} files would be.",
    help: `A score may include 64 files at most, those included by its includes counted. Join some of them.`
  },
  "include-unsound": {
    level: "warning",
    sentence: "The included file \u201C{path}\u201D has errors of its own ({count}).",
    help: `What the included file says rightly is used; what it says wrongly is not, and may be missed here. Open that file, or proof
it by itself:

    bentside proof house.bent`
  },
  "not-utf8": {
    level: "error",
    sentence: "A character here cannot be read: the file is not UTF-8 text ({count} such).",
    help: `Bentside reads UTF-8. A file saved in another encoding shows wrong signs where it has accented letters, and they cannot be
got back from here. Open it in an editor with its old encoding ("Western", "UTF-16" \u2026) and save it as UTF-8.

The finding stands at the first such character. A file like this is never rewritten by \`bentside align\`.`
  },
  "byte-order-mark": {
    level: "hint",
    sentence: "The file begins with an invisible byte order mark; it is left out.",
    help: `Some editors put an invisible mark before the first character of a file. It means nothing in UTF-8 and is skipped; columns of
the first line count without it. Save the file as "UTF-8" rather than "UTF-8 with BOM" to be rid of it.`
  },
  "and-more": {
    level: "info",
    sentence: "{count} more findings in this {where} are not shown.",
    help: `Not more than 200 findings of one lane and 2,000 of one file are shown, the gravest first. So many usually have one cause: a
wrong value at the start of a lane, a missing declaration, a file that is no score. Mend the first ones and look again.

This line is as grave as the gravest finding that it hides.`
  }
});

// grammar/findings/lane.ts
var laneFindings = entries({
  "not-understood": {
    level: "error",
    sentence: "\u201C{text}\u201D is no sign of this notation.",
    help: `Something in the lane could not be read. The rest of the bar is kept, but its time is not counted.

A lane holds values (\`4\`, \`8.\`), notes (\`c5\`, \`f#\`), rests (\`r\`), gaps (\`_\`), marks glued to their note (\`c5'zz\`),
spans (\`{3in2 8 c5 d e}\`), options (\`<K: 4 c5 ; L: 4 d5>\`), changes (\`(now C3)\`) and barlines.`
  },
  "typographic-apostrophe": {
    level: "error",
    sentence: "\u201C{text}\u201D holds a typographic apostrophe; a mark begins with the straight one.",
    help: `Word processors turn ' into a curly sign. Marks begin with the straight apostrophe: \`c5'zz\`.`
  },
  "dead-key": {
    level: "error",
    sentence: "\u201C{text}\u201D holds an accented letter: the apostrophe key was a dead key; {meant} is meant.",
    help: `On some keyboard layouts ' followed by a vowel gives an accented letter, so \`c5'arp\` becomes \`c5\xE1rp\`. The fix takes them apart.`
  },
  "lone-dot": {
    level: "error",
    sentence: "A dot stands alone; it belongs to a value (4.), or to a note that runs through the barline ('through(dot)).",
    help: `A dot drawn after a barline belongs to the note before it. Write the note with its whole value and \`'through(dot)\`:

    dessus | \u2026 2. c5'through(dot) | 4 d5 \u2026 |`
  },
  "accidental-after-octave": {
    level: "error",
    sentence: "In \u201C{text}\u201D the accidental stands after the octave; it stands before: {meant}.",
    help: `A note is typed in this order: letter, accidental, octave: \`f#5\`, \`f[#]5\`, \`f(#)5\`.`
  },
  "note-order": {
    level: "error",
    sentence: "The parts of \u201C{text}\u201D stand in another order than they are typed in; {meant} is meant.",
    help: `A note is typed in this order: letter, accidental, \`[#]\` or \`(#)\`, octave, \`?\`, \`=\`, then marks and annotations:
\`c#5?='zz*n7\`.`
  },
  "value-glued": {
    level: "error",
    sentence: "\u201C{text}\u201D glues a value to a note; put white space between: {meant}.",
    help: `A value is a word of its own and holds until the next value: \`8 c5 d e f\`.`
  },
  "note-and-value": {
    level: "error",
    sentence: "\u201C{text}\u201D has the value after the note; it is typed before: {meant}.",
    help: `A value is typed before the notes that it holds for: \`8 c5 d\`.`
  },
  "beam-glued": {
    level: "error",
    sentence: "\u201C{text}\u201D of a beam has white space on either side.",
    help: `\`&\` joins and \`,\` parts beams between two events: \`8 c5 & d , e f\`.`
  },
  "notes-run-together": {
    level: "error",
    sentence: "\u201C{text}\u201D runs notes together; put white space between: {meant}.",
    help: `Each note is a word of its own: \`f a c e\`. Notes of a chord are joined by a hyphen: \`f4-a-c5\`.`
  },
  "capital-note": {
    level: "error",
    sentence: "\u201C{text}\u201D: notes are small letters with the octave as a digit; is {meant} meant?",
    help: `Middle C is \`c4\`; capital letters are values (\`B\`, \`L\`, \`Mx\`) and clefs.`
  },
  "bad-mark": {
    level: "error",
    sentence: "\u201C{text}\u201D is no mark: after the apostrophe stands the name of a sign, a finger 1 to 5, or a reserved word.",
    help: `Marks: \`'zz\`, \`'pince\`, \`'3\`, \`'4-5\`, \`'#\`, \`'u\` \u2026 \`'.\`, \`'fermata\`. Forms stand in this order: \`'[zz]\`, \`?\`, \`+\`, \`(\u2026)\`, \`:reading\`.`
  },
  "unclosed-bracket": {
    level: "error",
    sentence: "\u201C{bracket}\u201D is never closed by \u201C{closing}\u201D in this lane.",
    help: `Spans \`{\u2026}\` and options \`<\u2026>\` close in the lane where they open; none crosses a system end.`
  },
  "stray-bracket": {
    level: "error",
    sentence: "\u201C{bracket}\u201D closes or parts nothing that is open here.",
    help: `\`}\` closes a span \`{\u2026}\`, \`>\` closes options \`<K: \u2026 ; L: \u2026>\`, and \`;\` parts the options between them.`
  },
  "too-deep": {
    level: "error",
    sentence: "Brackets lie more than {deepest} deep here.",
    help: `Spans and options may nest, but not more than 32 deep.`
  },
  "bad-barline": {
    level: "error",
    sentence: "\u201C{text}\u201D is no barline; there are |, ||, |||, :||, ||: and :||:.",
    help: `Barlines are typed as drawn: \`|\` single, \`||\` double, \`|||\` final, \`:||\`, \`||:\` and \`:||:\` for repeats. \`[]\` after it makes it the editor's.`
  },
  "barline-glued": {
    level: "warning",
    sentence: "A barline has white space before it.",
    help: `Write \`c5 |\`, not \`c5|\`.`
  },
  "barline-joint": {
    level: "error",
    sentence: "The line above ends with {above}, this one begins with {below}: they are one barline and cannot both be meant.",
    help: `A lane that is continued on a new line begins with the barline that ended the line above, or with a plain one.`
  },
  "span-without-head": {
    level: "error",
    sentence: "A span begins with its head glued to the bracket: {3in2 \u2026}, {small \u2026}, {overdot \u2026}.",
    help: `What braces mean is said right after the bracket: a tuplet \`{3in2 8 c5 d e}\`, small notes \`{small 16 d5 e}\`, a hint \`{overdot \u2026}\`, a state of the source \`{unclear \u2026}\`.`
  },
  "unknown-span": {
    level: "error",
    sentence: "\u201C{text}\u201D begins no span; there are {known}, and tuplets like 3in2.",
    help: `The word after \`{\` says what the span is: hints (\`overdot inegal assimilate snap literal\`), \`small\`, \`black\`, \`void\`, \`lig\`, and the state of the source (\`unclear supplied deleted added\`).`
  },
  "impossible-proportion": {
    level: "error",
    sentence: "\u201C{text}\u201D is no proportion: both numbers lie between 1 and 99.",
    help: `\`{3in2 \u2026}\` is three in the time of two. Numbers go from 1 to 99.`
  },
  "span-takes-no-readings": {
    level: "error",
    sentence: "A span \u201C{text}\u201D holds for all readings; no reading is named after it.",
    help: `Tuplets, \`small\`, \`black\`, \`void\` and \`lig\` say what the source shows and take no \`:reading\`. Where sources differ, write options.`
  },
  "span-takes-no-ratio": {
    level: "error",
    sentence: "A span \u201C{text}\u201D takes no such numbers.",
    help: `\`{inegal 2:1 \u2026}\` takes the lengths of the two notes, \`{black 3in2 \u2026}\` and \`{void 1in2 \u2026}\` a proportion; the others take none.`
  },
  "option-without-label": {
    level: "error",
    sentence: "An option says whose it is: a label glued to a colon, <K: \u2026 ; L: \u2026>.",
    help: `Each option begins with the witnesses or readings that have it, without white space around commas: \`<K,M: 4 c5 ; L: 4 d5>\`.`
  },
  "omit-misplaced": {
    level: "error",
    sentence: "`omit` stands alone in an option: <K: \u2026 ; L: omit>.",
    help: `\`omit\` says that a witness has nothing at all here, not even time. It stands alone in its option.`
  },
  "mark-without-event": {
    level: "error",
    sentence: "The mark \u201C{text}\u201D has no note, rest or gap before it.",
    help: `A mark is glued to its event: \`c5'zz\`. At the beginning of a bar there is nothing it could belong to.`
  },
  "annotation-without-event": {
    level: "error",
    sentence: "The annotation \u201C{text}\u201D has nothing before it that it could speak of.",
    help: `An annotation is glued to what it speaks of: a note (\`c5*n7\`), a mark, a closing bracket or a barline.`
  },
  "member-without-chord": {
    level: "error",
    sentence: "\u201C{text}\u201D belongs to a chord, but no note stands before it.",
    help: `The notes of a chord are joined by hyphens without white space: \`c4-e-g\`.`
  },
  "member-apart": {
    level: "error",
    sentence: "\u201C{text}\u201D is glued to the chord that it belongs to.",
    help: `The notes of a chord are joined by hyphens without white space: \`c4-e-g\`.`
  },
  "mark-apart": {
    level: "error",
    sentence: "\u201C{text}\u201D is glued to the note that it belongs to.",
    help: `Marks and annotations stand without white space after their note: \`c5'zz*n7\`.`
  },
  "bracket-glued": {
    level: "warning",
    sentence: "\u201C{text}\u201D has white space on either side.",
    help: `A change or words of the source stand by themselves: \`c5 (up) d\`. Round brackets glued to a sign are its parameters, as in
\`c5'zz(above)\`.`
  },
  "place-apart": {
    level: "error",
    sentence: "\u201C{text}\u201D says where a sign is drawn and is glued to that sign.",
    help: `\`c5'zz(above)\` is a sign drawn above. With white space between, round brackets hold a change or words: \`(below "tr.")\`.`
  },
  "impossible-value": {
    level: "error",
    sentence: "\u201C{text}\u201D is no value; there are Mx, L, B, 1, 2, 4, 8, 16, 32, 64 and 128, with up to four dots.",
    help: `Values are named by their fraction of a semibreve: \`1\` semibreve, \`2\` minim, \`4\` crotchet, \`8\` quaver \u2026 \`128\`; \`B\` breve, \`L\` longa, \`Mx\` maxima. \`8x\` is a triplet quaver, \`8x5in4\` five in the time of four; the numbers go from 1 to 99.`
  },
  "lost-without-value": {
    level: "error",
    sentence: "`lost` says how much is lost: a value, or ? for the rest of the bar.",
    help: `\`lost 2.\` takes the time of a dotted minim; \`lost ?\` takes the rest of the bar, whose time is then not counted.`
  },
  "lane-without-barline": {
    level: "error",
    sentence: "This line is neither a lane nor part of the system's head: after the voice's name stands a barline.",
    help: `A lane is a voice and its music after a barline:

    dessus | 4 c5 d e f |`
  },
  "lane-outside-system": {
    level: "error",
    sentence: "A lane stands outside a system; a line `system` opens one.",
    help: `Music stands in systems. Write \`system\` in the first column on the line above, with its clefs:

    system  upper C1  lower F4
      dessus | 4 c5 d e f |`
  },
  "lane-continues-nothing": {
    level: "error",
    sentence: "This line begins with a barline and continues a lane, but no lane stands above.",
    help: `A line that begins with a barline goes on with the lane above. The first lane of a system begins with its voice.`
  },
  "continues-nothing": {
    level: "error",
    sentence: "This indented line continues a statement, but none stands above.",
    help: `A statement begins in the first column. Lines that go on with it are indented.`
  },
  "bad-figure": {
    level: "error",
    sentence: "\u201C{text}\u201D is no figure of a bass: numbers, accidentals, / between stacked ones, , between successive ones.",
    help: `In a \`fig\` lane each note of the bass has one item: \`6\`, \`6/5\` (stacked), \`5,6\` (one after the other), \`#\`, \`6+\` (stroke through), \`[6]\` (the editor's), \`=\` (hold on), \`_\` (nothing).`
  },
  "align-refused": {
    level: "warning",
    sentence: "The text was left as it is: laid out, {reason}.",
    help: `Laying out moves white space alone. Before the new text takes the place of the old one, both are read and compared: every
sign, every comment and the whole tree must be the same, and laying out again must change nothing. If that does not hold, the old
text stays. Please report the passage as a fault of Bentside. Until it is mended, keep the passage out of it:

    // align off
    dessus | 4 c5  d   e f |
    // align on`
  }
});

// grammar/findings/score.ts
var scoreFindings = entries({
  "bar-too-short": {
    level: "error",
    sentence: "Bar {bar}, {voice}: {have}, {meter} needs {need}{hint}.",
    help: `The values of this lane do not fill the bar. A dot may be missing, a value wrong, or a rest not typed.

A bar may be short where a piece or section begins (an upbeat), as one of a pair around a repeat that adds up, and where
\`(irregular)\` says so. Where the source draws nothing for the missing time, type a gap: \`_\`.

    dessus | 4 c5 d e |          // short of a crotchet under C
    dessus | 4. c5 4 d 4. e |    // fills it`
  },
  "bar-too-long": {
    level: "error",
    sentence: "Bar {bar}, {voice}: {have}, {meter} needs {need}{hint}.",
    help: `The values of this lane overfill the bar. A barline may be missing, a value wrong, or a dot too many.

A note that the source lets run through the barline is marked: \`2. c5'through | \u2026\`. A bar that is meant to be longer is
marked \`(irregular)\`.`
  },
  "bar-count": {
    level: "error",
    sentence: "{voice} has {have} bars in this system, another lane has {need}.",
    help: `All lanes of a system hold the same number of bars. A bar in which a voice has nothing drawn is typed \`__\`, one with
a whole-bar rest \`rbar\`. Only in a \`system loose\` may barlines differ.`
  },
  "lanes-break-apart": {
    level: "error",
    sentence: "Bar {bar}, {voice}: the system ends inside this bar, but not at the same time in all lanes.",
    help: `A bar that goes on in the next system breaks at one moment for all lanes.`
  },
  "barline-missing": {
    level: "error",
    sentence: "Bar {bar}, {voice}: the other lanes end with a barline here, this one does not.",
    help: `A lane that ends without a barline goes on in the next system; all lanes of a system do so together or none.`
  },
  "barlines-disagree": {
    level: "error",
    sentence: "Bar {bar}, {voice}: {here} ends the bar here, {there} in another lane.",
    help: `A special barline is typed in one lane; a plain \`|\` in the others agrees with it. Two different special ones do not.`
  },
  "loose-totals": {
    level: "error",
    sentence: "{voice}: {have} semibreves in this loose system, another lane has {need}.",
    help: `In a \`system loose\` the barlines of the lanes need not agree, but all lanes last equally long.`
  },
  "free-one-lane": {
    level: "error",
    sentence: "{voice}: a free system has one lane, which holds everything from left to right.",
    help: `In a \`system free\` one lane of any voice holds all notes; \`(up)\` and \`(down)\` change the stave, \`d2-(up)f4\` is struck
together on two staves.`
  },
  "empty-bar": {
    level: "error",
    sentence: "Bar {bar}, {voice}: nothing is typed in this bar.",
    help: `Type \`rbar\` if the source has a whole-bar rest, \`__\` if it draws nothing. Only in a witness lane an empty bar means
\u201Cas in the lane above\u201D.`
  },
  "after-filler": {
    level: "error",
    sentence: "Bar {bar}, {voice}: `rbar`, `__` and `lost ?` take the rest of the bar and stand last in it.",
    help: `What fills the bar is its last event.`
  },
  "through-without-need": {
    level: "error",
    sentence: "Bar {bar}, {voice}: this note ends with its bar, so it does not run through the barline.",
    help: `\`'through\` marks a note that the source lets last beyond the barline with no tie drawn: \`2. c5'through | 4 d5 \u2026\`.`
  },
  "value-missing": {
    level: "error",
    sentence: "Bar {bar}, {voice}: no value holds here; type one before this event.",
    help: `Each lane of each system begins with a value and an octave: \`4 c5 d e\`. Both are typed again after options (\`>\`), and a
tuplet or a group of small notes begins with its value.`
  },
  "octave-missing": {
    level: "error",
    sentence: "Bar {bar}, {voice}: no octave holds for {note}; type its digit, c4 is the middle C.",
    help: `The last digit typed holds. Each lane of each system begins with one, and so does what follows options (\`>\`).`
  },
  "tuplet-incomplete": {
    level: "error",
    sentence: "Bar {bar}, {voice}: the {head} group is not complete: its notes must make up {n} equal values.",
    help: `A tuplet N in M fills N units of one value: \`{3in2 8 c5 d e}\`, \`{3in2 4 c5 8 d}\`. Values with \`x\` are gathered until
they do: \`8x c5 d e\`.`
  },
  "proportion-in-tuplet": {
    level: "hint",
    sentence: "Bar {bar}, {voice}: {text} stands inside a tuplet, so both proportions act.",
    help: `Inside \`{3in2 \u2026}\` values are typed without \`x\`; an \`x\` there is a tuplet within the tuplet.`
  },
  "options-unequal": {
    level: "error",
    sentence: "Bar {bar}, {voice}: the option {label} does not take the same time as the first one.",
    help: `Rival options take equal time, so that either can stand: \`<K: 2 c5 ; L: 4 c5 b4>\`. A witness that has nothing at all is
\`L: omit\`.`
  },
  "options-barlines": {
    level: "error",
    sentence: "Bar {bar}, {voice}: the option {label} does not have the same barlines as the first one.",
    help: `Options over several bars have a barline wherever the first one has.`
  },
  "repeat-first": {
    level: "error",
    sentence: "{voice}: a lone = cannot stand first in a system.",
    help: `A lone \`=\` repeats the event before it in the same lane, tied. Over a system end the suffix is enough: \`c5=\` at the end,
the note again at the beginning of the next system.`
  },
  "repeat-of-nothing": {
    level: "error",
    sentence: "A lone = repeats the note before it, but there is none.",
    help: `A lone \`=\` stands after a note or chord: \`2 c5 4 =\`.`
  },
  "repeat-after-partial-tie": {
    level: "error",
    sentence: "A lone = repeats the whole chord before it, but only some of its notes are tied.",
    help: `Type the tied notes of the chord instead: \`2 c4=-e 4 c4-f\`.`
  },
  "tie-other-pitch": {
    level: "error",
    sentence: "The tie on {note} finds no {note} in the next event.",
    help: `A tie leads to the same pitch in the next event of its voice. Between different notes a curve is meant: \`c5'u d'.\`.`
  },
  "tie-to-nothing": {
    level: "error",
    sentence: "The tie on {note} has no partner: no note follows it.",
    help: `A tie leads to the same pitch in the next event of its voice, over barlines and system ends. A curve whose end the source
does not show is \`'u~\`.`
  },
  "curve-never-ends": {
    level: "error",
    sentence: "The curve begun here by {text} never ends.",
    help: `A curve \`'u\` is ended by \`'.\` in the same voice. Where the source does not show its end, write \`'u~\`.`
  },
  "curve-end-alone": {
    level: "error",
    sentence: "{text} ends a curve, but none is open in this voice (a staccato dot is 'dot).",
    help: `\`'.\` ends the curve begun last. A dot over the note is \`'dot\`; an end whose beginning the source does not show is \`'.~\`.`
  },
  "curve-end-unmatched": {
    level: "error",
    sentence: "{text} ends a curve that was never begun: no open curve has that note or name.",
    help: `\`'.c3\` ends the latest open curve begun on c3; \`'.(q1)\` the one begun with \`'u(q1)\`, also in another voice.`
  },
  "unknown-sign": {
    level: "error",
    sentence: "\u201C{name}\u201D is no sign of the catalogue nor of any table here; nearest: {meant}.",
    help: `After an apostrophe stands the short or long name of a shape (\`zz\`, \`ca\`, \`turn\`), or a name that a built-in table or
one of the file's own gives to a shape (\`pince\`).`
  },
  "sign-undecided": {
    level: "error",
    sentence: "\u201C{name}\u201D means different shapes in different tables ({tables}); choose a table for the file or name the shape.",
    help: `The same word names different drawings in different books. \`signs anglebert-1689\` at the head of the file decides it, or write
the shape that the source draws: \`'ca\`, \`'zs\`.`
  },
  leap: {
    level: "hint",
    sentence: "Bar {bar}, {voice}: {note} lies {interval} steps from the note before and has no octave digit; is the octave meant?",
    help: `The last digit typed holds, there is no nearest octave. A leap of a seventh or more without a digit is often a slip; typing
the digit says that it is meant.`
  },
  "restated-value": {
    level: "hint",
    sentence: "Bar {bar}, {voice}: the value {text} holds already.",
    help: `A value holds until the next one. Typing it again within a bar does no harm, but often another value was meant.`
  },
  "ending-not-first": {
    level: "error",
    sentence: "Bar {bar}, {voice}: (ending \u2026) stands first in its bar.",
    help: `An ending begins with its bar: \`| (ending 1) 2 c5 d :||\`.`
  },
  "section-not-at-barline": {
    level: "error",
    sentence: "The section {name} begins inside a bar; a section begins at a barline.",
    help: `Write \`(section B)\` first in its bar, or \`section B\` on a line before its system.`
  },
  "unknown-section": {
    level: "error",
    sentence: "There is no section {name} in this piece; there are {known}.",
    help: `\`order\` names sections that the piece has: \`section A\` before a system or \`(section A)\` at a barline.`
  },
  "no-stave-there": {
    level: "error",
    sentence: "Bar {bar}, {voice}: there is no stave {way} this one.",
    help: `\`(up)\` and \`(down)\` move to the neighbouring stave in the order of the declarations, from top to bottom.`
  },
  "clef-off-stave": {
    level: "error",
    sentence: "{clef} stands on no line of the stave {stave}, which has {lines} lines.",
    help: `Lines are counted from the bottom. \`stave lower lines 8\` declares more than five.`
  },
  "clef-missing": {
    level: "warning",
    sentence: "The stave {stave} has notes but no clef so far.",
    help: `The head of the first system states the clefs: \`system  upper C1  lower F4\`.`
  },
  "meter-missing": {
    level: "hint",
    sentence: "No meter is stated, so the bars are not summed.",
    help: `\`system  meter C\` states the sign as drawn; \`meter cut-C = 2/1\` says a length of its own. Without one, only the lanes are
compared with one another.`
  },
  "piece-ends-open": {
    level: "warning",
    sentence: "The last system of the piece ends without a barline.",
    help: `A lane that ends without a barline goes on in the next system, but none follows. Type the final barline: \`|||\`.`
  },
  "changes-disagree": {
    level: "error",
    sentence: "Two lanes disagree about what is drawn here: {here} and {there}.",
    help: `A change of clef, signature, meter or tempo is typed in one lane; typed in two it must be the same.`
  },
  "sub-lane-alone": {
    level: "error",
    sentence: "`{name}` stands under the lane of a voice, but none stands above it.",
    help: `\`fig\` and \`text\` belong to the lane above them.`
  },
  "sub-lane-bars": {
    level: "error",
    sentence: "This `{name}` lane has {have} bars, its voice has {need}.",
    help: `A sub-lane has the bars of its lane; one that has nothing is left empty between its barlines.`
  },
  "sub-lane-items": {
    level: "error",
    sentence: "Bar {bar}: {have} items in `{name}` for {need} notes of the lane.",
    help: `\`fig\` has one item for each note, chord, rest or lone \`=\`; \`text\` one for each note that is not tied to the one before.
\`_\` means nothing drawn, \`=\` holds on.`
  },
  "lane-twice": {
    level: "error",
    sentence: "{voice} has two lanes in this system.",
    help: `A voice has at most one lane a system. To go on with it on the next line, begin that line with a barline. What a witness has
is a witness lane: \`dessus L | \u2026 |\`.`
  },
  "witness-lane-alone": {
    level: "error",
    sentence: "The lane of witness {witness} stands under the lane of {voice}, which is missing above it.",
    help: `A witness lane \`dessus L | \u2026 |\` stands under \`dessus | \u2026 |\` and has only the bars that differ.`
  },
  "unknown-witness": {
    level: "error",
    sentence: "{name} is no witness of this file; {meant}.",
    help: `Witnesses are declared by \`source K "\u2026"\`.`
  }
});

// grammar/findings/statement.ts
var statementFindings = entries({
  // ── words ──
  "unknown-statement": {
    level: "error",
    sentence: "\u201C{word}\u201D begins no statement; expected was {expected}.",
    help: `A line that begins in the first column is a statement and opens with its keyword. This word is none, so the
line and what belongs to it were passed over.

Before:
\`\`\`
stav upper lines 5
\`\`\`
After:
\`\`\`
stave upper lines 5
\`\`\`
A line that continues a statement, or a lane, is indented.`
  },
  "unknown-clause": {
    level: "error",
    sentence: "\u201C{word}\u201D has no place in `{where}`; expected was {expected}.",
    help: `After its first words a statement has clauses, each with a keyword. Neither a clause nor anything else that
could stand here begins with this word; it was passed over to the next clause.

Before:
\`\`\`
voice taille upper stms down
\`\`\`
After:
\`\`\`
voice taille upper stems down
\`\`\``
  },
  "unknown-word": {
    level: "error",
    sentence: "\u201C{word}\u201D cannot stand here; expected was {expected}.",
    help: `In this place one word of a short list stands.

Before:
\`\`\`
practice overdot doubel
\`\`\`
After:
\`\`\`
practice overdot double
\`\`\``
  },
  "unknown-change": {
    level: "error",
    sentence: "\u201C{word}\u201D is no change that can be made in a lane; expected was {expected}.",
    help: `A round bracket that stands by itself in a lane is a change or words of the source. It begins with one of
\`now up down home stems manual custos ending section irregular above below\`.

Before:
\`\`\`
dessus | (nwo C3) 4 c5 d |
\`\`\`
After:
\`\`\`
dessus | (now C3) 4 c5 d |
\`\`\``
  },
  "missing-word": {
    level: "error",
    sentence: "Before \u201C{before}\u201D stands `{word}`.",
    help: `A small word or sign belongs between the two.

Before:
\`\`\`
tempo 2 50
pitch a4 415
\`\`\`
After:
\`\`\`
tempo 2 at 50
pitch a4 = 415
\`\`\``
  },
  "missing-argument": {
    level: "error",
    sentence: "Something is missing after `{where}`: {expected}.",
    help: `The statement or clause breaks off before it has said all that it must.

Before:
\`\`\`
reading french
  takes
\`\`\`
After:
\`\`\`
reading french
  takes K
\`\`\``
  },
  "wrong-argument": {
    level: "error",
    sentence: "\u201C{word}\u201D cannot stand here; expected was {expected}.",
    help: `Something of another kind is expected in this place: a note value, a pitch, a clef, a number.

Before:
\`\`\`
instrument harpsichord compass g-d
tempo minim at 50
\`\`\`
After:
\`\`\`
instrument harpsichord compass g1-d6
tempo 2 at 50
\`\`\`
Pitches in statements are small letters, with the octave where one place on the keyboard is meant: c4 is middle C.
A fifth is given from its lower to its upper note (\`c-g\`, and \`g#-eb\` for the wolf), a divided key by the two names of
one key (\`d#/eb\`).`
  },
  "too-much": {
    level: "error",
    sentence: "Nothing more can stand after `{where}`: \u201C{word}\u201D was passed over.",
    help: `The statement or change is complete before this word.

Before:
\`\`\`
accidentals note bar
\`\`\`
After:
\`\`\`
accidentals note
\`\`\``
  },
  "repeated-clause": {
    level: "warning",
    sentence: "`{word}` stands twice in one `{where}`; the first one counts.",
    help: `This clause can stand only once in a statement.

Before:
\`\`\`
reading french
  takes K
  takes L
\`\`\`
After:
\`\`\`
reading french
  takes K,L
\`\`\``
  },
  // ── strings and lists ──
  "typographic-quotes": {
    level: "error",
    sentence: 'The quotation mark {quote} is typographic; a string stands between straight ones ("\u2026").',
    help: `Strings stand between straight quotation marks; a word processor likes to change them. Inside a string
typographic marks are welcome, and two straight marks stand for one.

Before:
\`\`\`
title \u201CEntr\xE9e\u201D
\`\`\`
After:
\`\`\`
title "Entr\xE9e"
\`\`\``
  },
  "unclosed-string": {
    level: "error",
    sentence: "The string is not closed on its line.",
    help: `A string begins and ends with a quotation mark on one line. Two quotation marks inside stand for one.

Before:
\`\`\`
title "Entr\xE9e
\`\`\`
After:
\`\`\`
title "Entr\xE9e"
\`\`\``
  },
  "needs-quotes": {
    level: "error",
    sentence: "\u201C{word}\u201D must stand in quotes.",
    help: `Titles, descriptions, page labels and file names stand in quotes, however short they are.

Before:
\`\`\`
page 3v
\`\`\`
After:
\`\`\`
page "3v"
\`\`\``
  },
  "space-in-list": {
    level: "error",
    sentence: "The commas of a list have no space around them.",
    help: `Members of a list are typed without spaces.

Before:
\`\`\`
takes K, L
\`\`\`
After:
\`\`\`
takes K,L
\`\`\``
  },
  // ── names ──
  "bad-name": {
    level: "error",
    sentence: "\u201C{word}\u201D cannot be {expected}: a name is a letter, then letters, digits and `_`.",
    help: `Names that lanes cite are letters without accents, digits and \`_\`, and begin with a letter. Names of tables,
temperaments and instruments may have hyphens. A layer of a source is the source, a full stop and a number.

Before:
\`\`\`
voice haute-contre upper
\`\`\`
After:
\`\`\`
voice haute_contre upper
\`\`\``
  },
  "reserved-name": {
    level: "error",
    sentence: "\u201C{word}\u201D cannot be {expected}: the word has a meaning of its own there.",
    help: `\`fig\` and \`text\` are no voices; \`loose free key meter tempo at none lines stems\` are no staves;
\`written main sic corr omit\` are no sources, readings or places.

Before:
\`\`\`
reading main "The main text"
\`\`\`
After:
\`\`\`
reading plain "The main text"
\`\`\``
  },
  "stave-like-note": {
    level: "error",
    sentence: "A stave cannot be called \u201C{word}\u201D: in a signature or a head it would be read as a note or a clef.",
    help: `\`key f bb\` would not say whether f is a stave or a note.

Before:
\`\`\`
stave f lines 5
\`\`\`
After:
\`\`\`
stave lower lines 5
\`\`\``
  },
  // ── numbers, meters, clefs ──
  "number-out-of-range": {
    level: "error",
    sentence: "{word} is out of range: {what} lies between {low} and {high}.",
    help: `The number is beyond what there is.

Before:
\`\`\`
stave upper lines 12
\`\`\`
After:
\`\`\`
stave upper lines 6
\`\`\``
  },
  "ratio-out-of-range": {
    level: "error",
    sentence: "The numbers of {word} must lie between 1 and {most}.",
    help: `Neither number of a ratio can be 0 or more than 99.

Before:
\`\`\`
practice inegal 8 300:200
\`\`\`
After:
\`\`\`
practice inegal 8 3:2
\`\`\``
  },
  "bar-out-of-range": {
    level: "error",
    sentence: "A bar cannot be {word} long: 1 to {beats} of a semibreve, its half, its quarter \u2026 to its {smallest}th.",
    help: `The length of a bar is a fraction of a semibreve whose lower number is a note value: 1, 2, 4, 8 \u2026 128.

Before:
\`\`\`
meter cut-C = 2/3
\`\`\`
After:
\`\`\`
meter cut-C = 2/2
\`\`\``
  },
  "unknown-meter": {
    level: "error",
    sentence: "The meter sign \u201C{word}\u201D has no usual length; say it: `meter {word} = 3/2`.",
    help: `The signs \`C cut-C O 2 3\` and fractions such as \`6/4\` have a usual length. Any other sign is kept as the source
draws it, if the length of its bar is said.

Before:
\`\`\`
meter cut-O
\`\`\`
After:
\`\`\`
meter cut-O = 3/1
\`\`\``
  },
  "clefs-disagree": {
    level: "error",
    sentence: "The clefs {first} and {second} do not agree about the lines of the stave.",
    help: `Two clefs at the head of one stave must give every line the same note: C stands two lines above F, G two above C.

Before:
\`\`\`
system lower F4+C5
\`\`\`
After:
\`\`\`
system lower F4+C6
\`\`\``
  },
  // ── recipes ──
  "recipe-word": {
    level: "error",
    sentence: "\u201C{word}\u201D says nothing in a recipe; expected was {expected}.",
    help: `A recipe is phrases parted by commas: \`on beat\` or \`before beat\` first, then steps from the written note with
their \`for\` or \`at\`, then \`hold\` or \`rest\`. The phrase was passed over from here.

Before:
\`\`\`
zz "shake" : on beat, (+1 0) repeatd, hold
\`\`\`
After:
\`\`\`
zz "shake" : on beat, (+1 0) repeated, hold
\`\`\``
  },
  "recipe-comma": {
    level: "error",
    sentence: "Between the phrases of a recipe stand a comma and a space, at \u201C{word}\u201D.",
    help: `Before:
\`\`\`
ca "pinc\xE9" : on beat,0 -1 0 hold
\`\`\`
After:
\`\`\`
ca "pinc\xE9" : on beat, 0 -1 0, hold
\`\`\``
  },
  "recipe-bracket": {
    level: "error",
    sentence: "What is repeated stands between round brackets.",
    help: `Before:
\`\`\`
zz "shake" : on beat, +1 0 repeated
\`\`\`
After:
\`\`\`
zz "shake" : on beat, (+1 0) repeated
\`\`\``
  },
  "recipe-start-first": {
    level: "error",
    sentence: "`{word}` stands once and at the head of a recipe.",
    help: `Before:
\`\`\`
ca "pinc\xE9" : 0 -1 0, on beat, hold
\`\`\`
After:
\`\`\`
ca "pinc\xE9" : on beat, 0 -1 0, hold
\`\`\``
  },
  "recipe-start-missing": {
    level: "warning",
    sentence: "The recipe does not say whether it begins on the beat or before it; on the beat is taken.",
    help: `Before:
\`\`\`
ca "pinc\xE9" : 0 -1 0, hold
\`\`\`
After:
\`\`\`
ca "pinc\xE9" : on beat, 0 -1 0, hold
\`\`\``
  },
  "recipe-extends-first": {
    level: "error",
    sentence: "`extends` stands once and before all steps of its own.",
    help: `A row that extends another begins with what that row gives and goes on with its own steps.

Before:
\`\`\`
zz+ca "shake and beat" : -1 0, extends zz
\`\`\`
After:
\`\`\`
zz+ca "shake and beat" : extends zz, -1 0
\`\`\``
  },
  "recipe-unresolved-alone": {
    level: "error",
    sentence: "A row that is `unresolved` gives no notes; the steps are passed over.",
    help: `A table that names a sign without saying how it is played says \`unresolved\` and why, and nothing more.

Before:
\`\`\`
ss "two strokes" : on beat, 0 +1 0, unresolved "its meaning is disputed"
\`\`\`
After:
\`\`\`
ss "two strokes" : unresolved "its meaning is disputed"
\`\`\``
  },
  "recipe-ended": {
    level: "error",
    sentence: "Nothing can follow `{word}` unless it says for which share of the value.",
    help: `\`hold\` and \`rest\` alone last to the end of the note.

Before:
\`\`\`
cb "suspension" : on beat, rest, 0
\`\`\`
After:
\`\`\`
cb "suspension" : on beat, rest 1/4, 0
\`\`\``
  },
  "step-without-sign": {
    level: "error",
    sentence: "Does \u201C{word}\u201D mean a step above or below? Write +{word} or -{word}.",
    help: `Steps are counted from the written note, which is 0: +1 the step above, -1 the step below.

Before:
\`\`\`
zz "shake" : on beat, (1 0) repeated
\`\`\`
After:
\`\`\`
zz "shake" : on beat, (+1 0) repeated
\`\`\``
  },
  "share-out-of-range": {
    level: "error",
    sentence: "A share of the value cannot be {word}: it is a part of the whole, such as 1/2.",
    help: `Before:
\`\`\`
cb "cheute" : on beat, -1 for 3/2, 0
\`\`\`
After:
\`\`\`
cb "cheute" : on beat, -1 for 1/2, 0
\`\`\``
  },
  // ── declarations taken together ──
  "name-used-twice": {
    level: "error",
    sentence: "The name \u201C{name}\u201D is given twice; the first one counts.",
    help: `Each name stands for one thing. Sources and readings share their names, since an option can cite either.

Before:
\`\`\`
source  K "Thornmere Keyboard Book"
reading K "As the book has it"
\`\`\`
After:
\`\`\`
source  K     "Thornmere Keyboard Book"
reading plain "As the book has it"
\`\`\``
  },
  "stated-twice": {
    level: "warning",
    sentence: "`{name}` is stated twice for the file; the first one counts.",
    help: `A file has one title, pitch, tuning, instrument, practice of accidentals and sign table; readings may choose others.

Before:
\`\`\`
accidentals note
accidentals bar
\`\`\`
After:
\`\`\`
accidentals note

reading modern
  accidentals bar
\`\`\``
  },
  "unknown-stave": {
    level: "error",
    sentence: "No stave is called \u201C{name}\u201D.",
    help: `A voice stands on a stave that is declared, or has one of its own if none is named.

Before:
\`\`\`
stave upper
voice dessus uper
\`\`\`
After:
\`\`\`
stave upper
voice dessus upper
\`\`\``
  },
  "unknown-voice": {
    level: "error",
    sentence: "No voice is called \u201C{name}\u201D.",
    help: `A practice can be for one voice; the voice must be declared.

Before:
\`\`\`
voice dessus upper
practice overdot voice desus
\`\`\`
After:
\`\`\`
voice dessus upper
practice overdot voice dessus
\`\`\``
  },
  "lines-of-another": {
    level: "warning",
    sentence: "The lines of stave \u201C{stave}\u201D are told where the stave is declared, not by voice \u201C{voice}\u201D.",
    help: `Only a voice that has a stave of its own says how many lines it has.

Before:
\`\`\`
stave upper
voice dessus upper lines 6
\`\`\`
After:
\`\`\`
stave upper lines 6
voice dessus upper
\`\`\``
  },
  "unknown-shape": {
    level: "error",
    sentence: "No sign is called \u201C{name}\u201D.",
    help: `A row of a table begins with the name of a sign's shape, or several joined by \`+\`; what the table calls it stands
after it in quotes.

Before:
\`\`\`
table house
  zigzagg "shake" : on beat, (+1 0) repeated
\`\`\`
After:
\`\`\`
table house
  zz "shake" : on beat, (+1 0) repeated
\`\`\``
  },
  "unknown-source": {
    level: "error",
    sentence: "No source is called \u201C{name}\u201D.",
    help: `A layer belongs to a source that is declared.

Before:
\`\`\`
hand K.2 "paler ink"
\`\`\`
After:
\`\`\`
source K "Thornmere Keyboard Book"
hand K.2 "paler ink"
\`\`\``
  },
  "unknown-reading": {
    level: "error",
    sentence: "No reading is called \u201C{name}\u201D.",
    help: `A reading is built on another that is declared, before it or after it.

Before:
\`\`\`
reading late from early
\`\`\`
After:
\`\`\`
reading early
  takes K
reading late from early
\`\`\``
  },
  "unknown-label": {
    level: "error",
    sentence: "No source, layer or reading is called \u201C{name}\u201D.",
    help: `What a reading takes is a source, a layer of one, another reading's options, \`sic\` or \`corr\`.

Before:
\`\`\`
source K "Thornmere Keyboard Book"
reading plain
  takes M
\`\`\`
After:
\`\`\`
source K "Thornmere Keyboard Book"
reading plain
  takes K
\`\`\``
  },
  "reading-circle": {
    level: "error",
    sentence: "The reading \u201C{name}\u201D is built on itself, by way of {way}.",
    help: `Readings are built one on another; following \`from\` must come to an end.

Before:
\`\`\`
reading early from late
reading late from early
\`\`\`
After:
\`\`\`
reading early
reading late from early
\`\`\``
  },
  "unknown-table": {
    level: "error",
    sentence: "No sign table is called \u201C{name}\u201D.",
    help: `A table is built in, defined in the file, or included.

Before:
\`\`\`
signs anglebert-1698
\`\`\`
After:
\`\`\`
signs anglebert-1689
\`\`\``
  },
  "table-circle": {
    level: "error",
    sentence: "The table \u201C{name}\u201D comes from itself, by way of {way}.",
    help: `Tables come one from another; following \`from\` must come to an end.

Before:
\`\`\`
table house from house
\`\`\`
After:
\`\`\`
table house from anglebert-1689
\`\`\``
  },
  "unknown-editor": {
    level: "error",
    sentence: "No editor signs as \u201C{name}\u201D.",
    help: `Whoever signs an annotation is declared once with the full name.

Before:
\`\`\`
note n7 by MK : "the tie is doubtful"
\`\`\`
After:
\`\`\`
editor MK "M. Keene"
note n7 by MK : "the tie is doubtful"
\`\`\``
  }
});

// grammar/findings/catalogue.ts
var catalogue = {
  ...laneFindings,
  ...statementFindings,
  ...scoreFindings,
  ...checkFindings,
  ...exportFindings,
  ...hostFindings
};

// tests/helpers/reference.ts
import { readFileSync } from "node:fs";
import { join } from "node:path";
var REFERENCE = join(import.meta.dirname, "../../grammar/REFERENCE.md");
var referenceText = () => readFileSync(REFERENCE, "utf8");
var KINDS = ["file", "frame", "timeline", "statements", "system", "lane"];
function fences(markdown) {
  const found = [];
  let open;
  for (const [index, line] of markdown.split("\n").entries()) {
    const mark2 = /^```(.*)$/.exec(line);
    if (open === void 0) {
      if (mark2 !== null) open = { line: index + 1, info: (mark2[1] ?? "").split(/\s+/).filter(Boolean), lines: [] };
    } else if (mark2 === null) open.lines.push(line);
    else {
      found.push({ line: open.line, info: open.info, text: open.lines.join("\n") });
      open = void 0;
    }
  }
  if (open !== void 0) throw new Error(`the block of line ${open.line} does not end`);
  return found;
}
var statementsIn = (text) => text.split(/\n(?=\S)/).filter((statement) => statement.trim() !== "" && !statement.startsWith("//"));
var NAMED = /* @__PURE__ */ new Set(["source", "hand", "editor", "reading", "note", "stave", "voice", "table", "temperament"]);
function declared(statement) {
  const [keyword = "", name3 = ""] = statement.split(/\s+/);
  return NAMED.has(keyword) ? `${keyword} ${name3}` : keyword;
}
function underFrame(frame, piece) {
  const own = new Set(statementsIn(piece).map(declared));
  return [...statementsIn(frame).filter((statement) => !own.has(declared(statement))), piece, ""].join("\n");
}
var lanesAsPieces = (text) => text.split("\n").map(
  (line) => line.trimStart().startsWith("|") ? `  ${line}` : `piece "one line"
system upper G2 lower F4 meter C
  dessus | ${line}`
).join("\n");
function fileOf(kind, text, frame) {
  if (kind === "lane") return underFrame(frame, lanesAsPieces(text));
  return kind === "system" || kind === "statements" ? underFrame(frame, text) : `${text}
`;
}
function kindOf(words3, line) {
  const [word = "file", ...more] = words3;
  const kind = KINDS.find((one) => one === word);
  if (kind === void 0 || more.length > 0) throw new Error(`line ${line}: no such kind of example: ${words3.join(" ")}`);
  return kind;
}
function examplesOf(markdown) {
  const all = fences(markdown);
  const frame = all.find(({ info }) => info[0] === "bent" && info[1] === "frame")?.text;
  if (frame === void 0) throw new Error("the reference has no frame for its examples");
  return all.flatMap(({ line, info, text }, index) => {
    const [language, ...words3] = info;
    if (language !== "bent") return [];
    const isWrong = words3[0] === "wrong";
    const kind = kindOf(isWrong ? words3.slice(2) : words3, line);
    const next = all[index + 1];
    return [
      {
        line,
        text,
        kind,
        file: fileOf(kind, text, frame),
        wrong: isWrong ? words3[1] : void 0,
        gives: next === void 0 || next.info[0] === "bent" ? void 0 : next.text
      }
    ];
  });
}

// tests/fuzz/check.ts
var SAMPLES = join2(import.meta.dirname, "../../samples");
var sources = () => [
  ...readdirSync(SAMPLES).filter((name3) => name3.endsWith(".bent")).map((name3) => readFileSync2(join2(SAMPLES, name3), "utf8")),
  ...examplesOf(referenceText()).map(({ file }) => file)
];

// tests/fuzz/edits.ts
function randomFrom(seed) {
  let state = seed >>> 0;
  return (below) => {
    state = state + 2654435769 >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ mixed >>> 16, 569420461);
    mixed = Math.imul(mixed ^ mixed >>> 15, 1935289751);
    mixed = (mixed ^ mixed >>> 15) >>> 0;
    return Math.floor(mixed / 2 ** 32 * below);
  };
}
var oneOf = (random, all) => all[random(all.length)] ?? "";
var CHARACTERS = [
  ...`abcdefgr0123456789.x?=_-|:;<>{}[]()*'"/&,#nB@~+! 
	`,
  ..."\u201C\u201D\u201E\u2019\xE1\0\r\u2028\uFEFF\u0301\u{1D11E}",
  "\uD800",
  "\uDC00",
  "\r\n"
];
var TOKENS = [
  ..."4 8. 16x 2.. B Mx 8x5in4 3 128..... 99999999999999999999 8x99in1 c5 f# bbb4 e[#] a(b) c9 c0 r rbar _ __ = [=] =?:L c5= omit lost".split(
    " "
  ),
  ...`'zz '[zz]? 'u '. '.c3 'u~ '.~ 'u(q) '.(q) '4-5 'through(dot) 'through 'w2 '# 'fermata 'zz+ 'zz:french *n7 *"a"`.split(
    " "
  ),
  ..."{3in2 {5in4 {small {overdot {inegal {black {void {lig {unclear } < <K: <K,L: <v3 ; ;L: > <sic: corr:".split(" "),
  ..."| || ||| :|| ||: :||: |||| |[]".split(" "),
  ...[
    "{3in2 8 c5 d e}",
    "{small 16 d5 e}",
    "<K: 2 c5 ; L: 4 c5 d>",
    "{black 3in2 4 c5 d e}",
    "lost 2.",
    "lost ?",
    '"Gay"',
    '(below "tr.")'
  ],
  ...[
    "(now C3)",
    "(now meter 3/4)",
    "(now key f#)",
    "(up)",
    "(home)",
    "(custos c5)",
    "(ending 1)",
    "(section B)",
    "(irregular)",
    "(manual upper)"
  ],
  ...[
    "(now meter C)",
    "(now tempo 4 at 63)",
    "(stems up)",
    "(section petite in B)",
    "(now meter 1/128)",
    "(now meter 99/1)"
  ],
  ...[
    "system",
    "system loose",
    "system free",
    'piece "x"',
    "section B",
    "order A A B",
    "order A A B B",
    "key bb",
    "upper C1",
    "lower F4+C6",
    "meter cut-C"
  ],
  ...[
    "\n  fig | 6 _ = |",
    "\n  text | la la |",
    "\n  dessus L | 4 c5 |",
    "\n  dessus | 1 c5 |",
    "\n  | 4 c5 |",
    '\npage "9"',
    '\nreading plain "x"'
  ],
  ...[
    "\nvoice dessus",
    "\nstave upper lines 4",
    '\nhand K.2 "x"',
    "\naccidentals bar",
    "\naccidentals group",
    "\nsigns anglebert-1689",
    "\nlink v3 v9"
  ]
];
var replaced = (text, at, length, by) => text.slice(0, at) + by + text.slice(at + length);
var placesOf = (text, pattern) => [...text.matchAll(pattern)].map(({ index }) => index);
var onLines = (edit) => (text, random) => {
  const lines2 = text.split("\n");
  edit(lines2, random(lines2.length), random);
  return lines2.join("\n");
};
var EDITS = [
  // Characters.
  (text, random) => replaced(text, random(text.length + 1), 0, oneOf(random, CHARACTERS)),
  (text, random) => replaced(text, random(text.length + 1), 1 + random(3), ""),
  (text, random) => replaced(text, random(text.length + 1), 1, oneOf(random, CHARACTERS)),
  (text, random) => replaced(text, random(text.length + 1), 0, oneOf(random, CHARACTERS).repeat(1 + random(40))),
  // Words.
  (text, random) => {
    const places2 = placesOf(text, /(?<=\s)(?=\S)/g);
    return replaced(text, places2[random(places2.length)] ?? 0, 0, `${oneOf(random, TOKENS)} `);
  },
  (text, random) => {
    const words3 = [...text.matchAll(/\S+/g)];
    const word = words3[random(words3.length)];
    return replaced(text, word?.index ?? 0, word?.[0].length ?? 0, random(3) === 0 ? "" : oneOf(random, TOKENS));
  },
  (text, random) => {
    const words3 = [...text.matchAll(/\S+/g)];
    const [from2, to2] = [words3[random(words3.length)], words3[random(words3.length)]];
    return replaced(text, to2?.index ?? 0, to2?.[0].length ?? 0, from2?.[0] ?? "");
  },
  // Stretches.
  (text, random) => replaced(text, random(text.length + 1), random(60), ""),
  (text, random) => {
    const from2 = random(text.length + 1);
    return replaced(text, random(text.length + 1), 0, text.slice(from2, from2 + random(80)));
  },
  // Lines.
  onLines((lines2, at) => lines2.splice(at, 1)),
  onLines((lines2, at) => lines2.splice(at, 0, lines2[at] ?? "")),
  onLines((lines2, at, random) => {
    const other = random(lines2.length);
    [lines2[at], lines2[other]] = [lines2[other] ?? "", lines2[at] ?? ""];
  }),
  onLines((lines2, at, random) => {
    lines2[at] = (lines2[at] ?? "").trimStart().padStart(random(4));
  }),
  onLines((lines2, at, random) => lines2.splice(at, 0, oneOf(random, TOKENS)))
];
function edited(text, random) {
  let now = text;
  for (let times = 1 + random(5); times > 0; times--) now = EDITS[random(EDITS.length)]?.(now, random) ?? now;
  return now;
}
function cutOut(text, random) {
  const [head2 = "", ...systems] = text.split(/^(?=system(?![\w-]))/m);
  if (systems.length < 3) return text;
  const from2 = random(systems.length);
  return [head2, ...systems.slice(from2, from2 + 1 + random(2))].join("");
}
function textOf(seed, sources2) {
  const random = randomFrom(seed);
  return edited(cutOut(sources2[random(sources2.length)] ?? "", random), random);
}

// grammar/layout/columns.ts
var nothing2 = /^[\p{M}\p{Cf}]$/u;
var wide = /^[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe4f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1f64f}\u{1f900}-\u{1f9ff}\u{20000}-\u{3fffd}]$/u;
function widthOf(text) {
  if (/^[ -~]*$/.test(text)) return text.length;
  let width = 0;
  for (const letter of text) width += nothing2.test(letter) ? 0 : wide.test(letter) ? 2 : 1;
  return width;
}
var padded = (text, width) => text + " ".repeat(Math.max(width - widthOf(text), 0));
var widest = (texts2) => texts2.reduce((most, text) => Math.max(most, widthOf(text)), 0);
var noField = { text: "", gap: 0 };
function inColumns(lines2) {
  const rows = lines2.map(() => "");
  const count = lines2.reduce((most, fields) => Math.max(most, fields.length), 0);
  for (let column = 0; column < count; column++) {
    const fields = lines2.map((line) => line[column] ?? noField);
    const used = fields.some(({ text }) => text !== "");
    if (!used) continue;
    const gap = fields.reduce((most, field) => Math.max(most, field.gap), 0);
    const start = column === 0 ? 0 : widest(rows) + gap;
    fields.forEach(({ text }, row3) => {
      if (text !== "") rows[row3] = padded(rows[row3] ?? "", start) + text;
    });
  }
  return rows;
}

// grammar/layout/lanes.ts
var LANE_INDENT = "  ";
var SUB_LANE_INDENT = "    ";
var knownBarline = /^(?:\||\|\||\|\|\||:\|\||\|\|:|:\|\|:)(?:\[\])?$/;
function isUnderstood(tree, block, lane) {
  const isBar = (bar) => {
    const at = offsetIn(block, lane, bar.pos);
    return knownBarline.test(/^:*\|[|:]*(?:\[\])?/.exec(tree.text.slice(at, at + bar.len))?.[0] ?? "");
  };
  const good = (item2) => {
    if (item2.kind === "junk") return false;
    if (item2.kind === "barline") return isBar(item2);
    if (item2.kind === "span") return item2.items.every(good);
    return item2.kind !== "options" || item2.options.every((option) => option.items.every(good));
  };
  const { pos, len } = lane.open;
  return knownBarline.test(tree.text.slice(block.offset + pos, block.offset + pos + len)) && lane.tree.segments.every(({ items: items2, bar }) => items2.every(good) && (bar === void 0 || isBar(bar)));
}
function innerBars(items2) {
  return items2.flatMap((item2) => {
    if (item2.kind === "barline") return [item2];
    if (item2.kind === "span") return innerBars(item2.items);
    return item2.kind === "options" ? innerBars(item2.options[0]?.items ?? []) : [];
  });
}
function barKinds(block, lane) {
  const kinds = /* @__PURE__ */ new Map();
  for (const { items: items2, bar } of lane.tree.segments) {
    for (const inner of innerBars(items2)) kinds.set(offsetIn(block, lane, inner.pos), "inside");
    if (bar !== void 0) kinds.set(offsetIn(block, lane, bar.pos), "ends");
  }
  return kinds;
}
var Signs = class {
  text = "";
  end = -1;
  add({ start, end, text }) {
    this.text += this.text === "" || start === this.end ? text : ` ${text}`;
    this.end = end;
  }
  /** Whether the leaf is a mark or an annotation glued to the last sign. */
  takes({ start, text }) {
    return start === this.end && /^['*]/.test(text);
  }
};
function rowOf(leaves, kinds) {
  const [first2, ...rest] = leaves;
  const open = new Signs();
  if (first2 !== void 0) open.add(first2);
  const cells = [];
  let current = new Signs();
  let bars2 = 1;
  let lastBar = open;
  for (const leaf of rest) {
    if (lastBar?.takes(leaf)) {
      lastBar.add(leaf);
      continue;
    }
    lastBar = void 0;
    const kind = kinds.get(leaf.start);
    if (kind === "ends") {
      lastBar = new Signs();
      lastBar.add(leaf);
      cells.push({ text: current.text, bars: bars2, bar: lastBar });
      current = new Signs();
      bars2 = 1;
    } else {
      if (kind === "inside") bars2++;
      current.add(leaf);
    }
  }
  const last2 = current.text === "" ? [] : [{ text: current.text, bars: bars2, bar: "" }];
  return { open: open.text, cells: [...cells.map((cell) => ({ ...cell, bar: cell.bar.text })), ...last2] };
}
function rowsOf(tree, block, lane, lines2) {
  const kinds = barKinds(block, lane);
  const leaves = leavesOfLane(tree, block, lane);
  const names2 = lane.witness === void 0 ? 1 : 2;
  const indent = lane.tree.kind === "lane" ? LANE_INDENT : SUB_LANE_INDENT;
  const rows = [];
  let from2 = 0;
  let before = 0;
  lane.lines.forEach((inBlock, index) => {
    const line = block.line + inBlock;
    const { start, text } = lines2[line] ?? { start: 0, text: "" };
    let to2 = from2;
    while (to2 < leaves.length && (leaves[to2]?.start ?? 0) < start + text.length) to2++;
    const here = leaves.slice(from2, to2);
    from2 = to2;
    const signs3 = index === 0 ? here.slice(names2) : here;
    if (index > 0 && kinds.has(signs3[0]?.start ?? -1)) before++;
    const row3 = rowOf(signs3, kinds);
    const head2 = index > 0 ? "" : indent + here.slice(0, names2).map((leaf) => leaf.text).join(" ");
    const comment = text.slice((here.at(-1)?.end ?? start) - start).trim();
    rows.push({ line, head: head2, before, comment, ...row3 });
    before += row3.cells.reduce((sum, cell) => sum + (cell.bar === "" ? cell.bars - 1 : cell.bars), 0);
  });
  return rows;
}
var between = (width) => width === 0 ? 1 : width + 2;
var Columns = class {
  open;
  widths = [];
  bars = [];
  constructor(rows) {
    this.open = widest(rows.map((row3) => row3.open));
    for (const wide2 of [false, true]) for (const row3 of rows) this.measure(row3, wide2);
  }
  measure(row3, wide2) {
    let column = 0;
    for (const { text, bars: bars2, bar } of row3.cells) {
      const last2 = column + bars2 - 1;
      if (bar !== "" && bars2 > 1 === wide2) {
        const before = wide2 ? this.total(column, last2 - 1) + (this.bars[last2 - 1] ?? 0) - 1 : 0;
        this.widths[last2] = Math.max(this.widths[last2] ?? 0, widthOf(text) - before);
        this.bars[last2] = Math.max(this.bars[last2] ?? 0, widthOf(bar));
      }
      column += bars2;
    }
  }
  /** Columns from the barline before one bar to the barline after another. */
  total(first2, last2) {
    let total = 0;
    for (let column = first2; column <= last2; column++) {
      total += between(this.widths[column] ?? 0);
      if (column < last2) total += this.bars[column] ?? 0;
    }
    return total;
  }
  body(row3) {
    let text = padded(row3.open, this.open);
    let column = 0;
    for (const cell of row3.cells) {
      const last2 = column + cell.bars - 1;
      const width = this.total(column, last2);
      text += cell.text === "" ? " ".repeat(width) : padded(` ${cell.text} `, cell.bar === "" ? 0 : width);
      text += padded(cell.bar, this.bars[last2] ?? 0);
      column += cell.bars;
    }
    return text.trimEnd();
  }
};
var hasBarsInCommon = (block) => !(block.statements[0]?.tree.statement.args ?? []).some(
  (arg) => arg.kind === "word" && (arg.text === "loose" || arg.text === "free")
);
var bodies = (rows) => {
  const columns = new Columns(rows);
  return rows.map((row3) => columns.body(row3));
};
function together(rows, inCommon) {
  const groups = /* @__PURE__ */ new Map();
  for (const row3 of rows) {
    const key = inCommon ? row3.before : row3.line;
    const group = groups.get(key);
    if (group === void 0) groups.set(key, [row3]);
    else group.push(row3);
  }
  return [...groups.values()];
}
function laidLanes(tree, block, lines2, off) {
  const laid = /* @__PURE__ */ new Map();
  if (block.kind !== "system") return laid;
  const rows = block.lanes.filter((lane) => isUnderstood(tree, block, lane)).flatMap((lane) => rowsOf(tree, block, lane, lines2)).filter((row3) => !off[row3.line]);
  const headWidth = widest(rows.map((row3) => row3.head));
  for (const group of together(rows, hasBarsInCommon(block))) {
    bodies(group).forEach((body, i) => {
      const row3 = group[i];
      if (row3 === void 0) return;
      laid.set(row3.line, { body: `${padded(row3.head, headWidth)} ${body}`, comment: row3.comment });
    });
  }
  return laid;
}

// grammar/layout/lines.ts
function fileLines(tree) {
  const lines2 = tree.lineStarts.map((start, i) => {
    const whole3 = tree.text.slice(start, tree.lineStarts[i + 1] ?? tree.text.length);
    const text = whole3.replace(/[\r\n]+$/, "");
    return { text, end: whole3.slice(text.length), start };
  });
  return lines2.at(-1)?.text === "" ? lines2.slice(0, -1) : lines2;
}
var isBlank = (text) => /^\s*$/.test(text);
var isComment = (text) => /^\s*\/\//.test(text);
var switched = /^\s*\/\/\s*align\s+(on|off)\s*$/;
function switchedOff(lines2) {
  let off = false;
  return lines2.map(({ text }) => {
    const word = switched.exec(text)?.[1];
    if (word !== void 0) off = word === "off";
    return off && word === void 0;
  });
}

// grammar/layout/same.ts
var places = /* @__PURE__ */ new Set(["pos", "len"]);
var ofSpaces = /* @__PURE__ */ new Set(["barline-glued"]);
function alike(a, b) {
  if (a === b) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    return Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((element, i) => alike(element, b[i]));
  }
  const keys2 = Object.keys(a).filter((key) => !places.has(key));
  const others = Object.keys(b).filter((key) => !places.has(key));
  return keys2.length === others.length && keys2.every((key) => Object.hasOwn(b, key) && alike(a[key], b[key]));
}
var codes2 = (problems) => problems.flatMap(({ code }) => ofSpaces.has(code) ? [] : [code]).sort();
var laneSaid2 = ({ name: name3, witness, open, tree, lines: lines2 }) => [
  name3.text,
  witness?.text,
  open,
  tree.kind,
  tree.segments,
  lines2.length,
  codes2(tree.problems)
];
var blockSaid = ({ kind, statements: statements2, lanes, problems }) => [
  kind,
  statements2.map(({ tree, lines: lines2 }) => [tree.statement, lines2.length, codes2(tree.problems)]),
  lanes.map(laneSaid2),
  codes2(problems)
];
var withoutSpaces = (text) => text.replace(/\s+/g, "");
function commentsOf(tree, laid) {
  return fileLines(tree).flatMap(({ text }, line) => {
    if (isComment(text)) return [text.trim()];
    const comment = laid.get(line)?.comment ?? "";
    return comment === "" ? [] : [comment];
  });
}
function lost(before, after) {
  if (withoutSpaces(before.text) !== withoutSpaces(after.text)) return "a sign would be lost";
  if (before.blocks.length !== after.blocks.length) return "a system would be lost";
  const same = before.blocks.every((block, i) => {
    const other = after.blocks[i];
    return other !== void 0 && alike(blockSaid(block), blockSaid(other));
  });
  return same ? void 0 : "the music would read otherwise";
}

// grammar/layout/statements.ts
var INDENT = "  ";
var WIDE = 2;
var families = {
  title: "source",
  source: "source",
  hand: "source",
  editor: "source",
  reading: "reading",
  stave: "stave",
  voice: "voice",
  instrument: "setting",
  pitch: "setting",
  tuning: "setting",
  tempo: "setting",
  accidentals: "setting",
  beaming: "setting",
  signs: "setting",
  practice: "setting",
  order: "setting"
};
var unsure = /* @__PURE__ */ new Set(["unclosed-string", "typographic-quotes", "unknown-statement"]);
var isUnderstood2 = ({ problems }) => problems.every(({ code }) => !unsure.has(code));
var Cutter = class {
  constructor(tree) {
    this.tree = tree;
    this.text = tree.text;
    const { args, clauses: clauses2, rows } = tree.statement;
    const every2 = [...clauses2, ...rows.flatMap((row3) => row3.clauses)];
    this.clauses = new Set(every2.map(({ pos }) => pos));
    this.descriptions = new Set(args.slice(1).flatMap(({ kind, pos }) => kind === "string" ? [pos] : []));
  }
  tree;
  text;
  /** Where clauses begin. */
  clauses;
  /** Where descriptions begin. */
  descriptions;
  isClause(token2) {
    return token2 !== void 0 && this.clauses.has(token2.pos);
  }
  gapBefore({ pos }) {
    return this.clauses.has(pos) || this.descriptions.has(pos) ? WIDE : 1;
  }
  /** Tokens as typed: glued, or with the spaces that belong between them. */
  joined(tokens) {
    let text = "";
    let end = -1;
    for (const token2 of tokens) {
      const gap = end < 0 ? 0 : token2.pos === end ? 0 : this.gapBefore(token2);
      text += " ".repeat(gap) + this.text.slice(token2.pos, token2.pos + token2.len);
      end = token2.pos + token2.len;
    }
    return text;
  }
  field(tokens, gap) {
    const [first2] = tokens;
    return { text: this.joined(tokens), gap: first2 === void 0 ? 0 : gap ?? this.gapBefore(first2) };
  }
  /** The first line: keyword and name, what else is said, then each clause or all of them. */
  firstLine(tokens, family) {
    const lead = tokens.slice(0, family !== "setting" && this.givesName(tokens[1]) ? 2 : 1);
    const rest = tokens.slice(lead.length);
    if (family === void 0 || family === "setting") return [this.field(lead), this.field(rest)];
    const at = rest.findIndex((token2) => this.isClause(token2));
    const plain = at < 0 ? rest : rest.slice(0, at);
    return [this.field(lead), this.field(plain), ...this.eachClause(rest.slice(plain.length))];
  }
  givesName(token2) {
    const { keyword, args } = this.tree.statement;
    const [part] = lookUp(statements, keyword)?.parts ?? [];
    return part?.kind === "free" && part.declares === true && token2 !== void 0 && args[0]?.pos === token2.pos;
  }
  /** Tokens parted before each clause. */
  eachClause(tokens) {
    const starts = tokens.flatMap((token2, i) => i === 0 || this.isClause(token2) ? [i] : []);
    return starts.map((start, i) => this.field(tokens.slice(start, starts[i + 1])));
  }
  /** A row of a table: what it is about, its clauses, its recipe. */
  rowLine(tokens) {
    const colon = tokens.findIndex(({ kind }) => kind === ":");
    const before = colon < 0 ? tokens : tokens.slice(0, colon);
    const at = before.findIndex((token2) => this.isClause(token2));
    const args = at < 0 ? before : before.slice(0, at);
    return [this.field(args), this.field(before.slice(args.length)), this.field(tokens.slice(before.length), WIDE)];
  }
  /** A clause of a reading on a line of its own: its name, what it says. */
  clauseLine(tokens) {
    return [this.field(tokens.slice(0, 1)), this.field(tokens.slice(1), WIDE)];
  }
};
var Statement = class {
  constructor(placed, block, lines2) {
    this.placed = placed;
    this.block = block;
    this.lines = lines2;
    this.cutter = new Cutter(placed.tree);
    this.rowStarts = new Set(placed.tree.statement.rows.map(({ pos }) => pos));
  }
  placed;
  block;
  lines;
  cutter;
  rows = { indent: INDENT, lines: [] };
  /** Where rows begin. */
  rowStarts;
  get keyword() {
    return this.placed.tree.statement.keyword;
  }
  get firstNumber() {
    return this.block.line + (this.placed.lines[0] ?? 0);
  }
  get lastNumber() {
    return this.block.line + (this.placed.lines.at(-1) ?? 0);
  }
  /** Sheets for its own lines; `first` and `clauses` are shared with its family. */
  sheets(first2, clauses2) {
    const alone = [];
    this.byLine().forEach((tokens, index) => {
      if (tokens.length === 0) return;
      const number = this.block.line + (this.placed.lines[index] ?? 0);
      const comment = this.commentAfter(tokens, number, index);
      const add2 = (sheet, fields) => {
        sheet.lines.push({ number, fields, comment });
      };
      const ownLine = { indent: INDENT, lines: [] };
      if (index === 0) add2(first2, this.cutter.firstLine(tokens, families[this.keyword]));
      else if (this.isRow(tokens)) add2(this.rows, this.cutter.rowLine(tokens));
      else if (this.isOneClause(tokens)) add2(clauses2, this.cutter.clauseLine(tokens));
      else {
        add2(ownLine, [this.cutter.field(tokens)]);
        alone.push(ownLine);
      }
    });
    return [this.rows, ...alone];
  }
  byLine() {
    const found = this.placed.lines.map(() => []);
    for (const token2 of lex(this.placed.tree.text).tokens) found[token2.line]?.push(token2);
    return found;
  }
  commentAfter(tokens, number, index) {
    const last2 = tokens.at(-1);
    const end = last2 === void 0 ? 0 : last2.pos + last2.len;
    const inLine = this.block.offset + (this.placed.starts[index] ?? 0) + end - (this.placed.tree.joints[index] ?? 0);
    const { text, start } = this.lines[number] ?? { text: "", start: 0 };
    return text.slice(inLine - start).trim();
  }
  isRow(tokens) {
    return tokens[0] !== void 0 && this.rowStarts.has(tokens[0].pos);
  }
  isOneClause(tokens) {
    const clauses2 = tokens.filter((token2) => this.cutter.isClause(token2));
    return this.keyword === "reading" && clauses2.length === 1 && clauses2[0] === tokens[0];
  }
};
function runs(all, lines2) {
  const found = [];
  for (const one of all) {
    const before = found.at(-1)?.at(-1);
    const family = families[one.keyword];
    const joins = before !== void 0 && family !== void 0 && families[before.keyword] === family && !lines2.slice(before.lastNumber + 1, one.firstNumber).some(({ text }) => isBlank(text));
    if (joins) found.at(-1)?.push(one);
    else found.push([one]);
  }
  return found;
}
function laidSheet({ indent, lines: lines2 }, off) {
  const moved = lines2.filter(({ number }) => !off[number]);
  const bodies2 = inColumns(moved.map(({ fields }) => fields));
  return moved.map(({ number, comment }, i) => [number, { body: indent + (bodies2[i] ?? ""), comment }]);
}
function laidStatements(block, lines2, off) {
  const all = block.statements.filter(({ tree }) => isUnderstood2(tree)).map((placed) => new Statement(placed, block, lines2));
  const sheets = runs(all, lines2).flatMap((run) => {
    const first2 = { indent: "", lines: [] };
    const clauses2 = { indent: INDENT, lines: [] };
    return [first2, clauses2, ...run.flatMap((statement) => statement.sheets(first2, clauses2))];
  });
  return new Map(sheets.flatMap((sheet) => laidSheet(sheet, off)));
}

// grammar/format.ts
var BEFORE_COMMENT = 2;
function laidLines(tree, lines2) {
  const off = switchedOff(lines2);
  return new Map(
    tree.blocks.flatMap((block) => [...laidStatements(block, lines2, off), ...laidLanes(tree, block, lines2, off)])
  );
}
function commentColumns(laid) {
  const columns = /* @__PURE__ */ new Map();
  const numbers = [...laid].flatMap(([line, { comment }]) => comment === "" ? [] : [line]).sort((a, b) => a - b);
  let run = [];
  const close = () => {
    const column = run.reduce((most, line) => Math.max(most, widthOf(laid.get(line)?.body ?? "")), 0);
    for (const line of run) columns.set(line, column + BEFORE_COMMENT);
    run = [];
  };
  for (const line of numbers) {
    if (run.length > 0 && run.at(-1) !== line - 1) close();
    run.push(line);
  }
  close();
  return columns;
}
function commentLine(text) {
  return `${/^\s/.test(text) ? "  " : ""}${text.trim()}`;
}
function laidOut(text) {
  const tree = parseFile(text);
  const lines2 = fileLines(tree);
  const off = switchedOff(lines2);
  const laid = laidLines(tree, lines2);
  const columns = commentColumns(laid);
  const usualEnd = lines2.find(({ end }) => end !== "")?.end ?? "\n";
  const written2 = (line, number) => {
    if (off[number]) return line.text;
    const own = laid.get(number);
    if (own === void 0) return isBlank(line.text) ? "" : isComment(line.text) ? commentLine(line.text) : line.text;
    if (own.comment === "") return own.body;
    return own.body + " ".repeat((columns.get(number) ?? 0) - widthOf(own.body)) + own.comment;
  };
  const kept2 = [];
  let blanks = 0;
  lines2.forEach((line, number) => {
    blanks = !off[number] && isBlank(line.text) ? blanks + 1 : 0;
    if (blanks < 2) kept2.push(written2(line, number) + (line.end === "" ? usualEnd : line.end));
  });
  if (blanks > 0) kept2.pop();
  return kept2.join("");
}
function proved(text, layOut) {
  const result = layOut(text);
  if (result === text) return { text, problems: [] };
  const [before, after] = [parseFile(text), parseFile(result)];
  const comments = (tree) => commentsOf(tree, laidLines(tree, fileLines(tree))).join("\n");
  const reason = lost(before, after) ?? (comments(before) === comments(after) ? void 0 : "a comment would be lost") ?? (layOut(result) === result ? void 0 : "a second time would change it again");
  if (reason === void 0) return { text: result, problems: [] };
  return { text, problems: [{ code: "align-refused", pos: 0, len: 0, slots: { reason } }] };
}
var formatFile = (text) => proved(text, laidOut);

// ../../tmp/try/ff.ts
var from = Number(process.argv[2]);
var to = Number(process.argv[3]);
var texts = sources();
var refused = 0;
var changed = 0;
var reasons = {};
var s = performance.now();
for (let i = from; i <= to; i++) {
  const t = textOf(i, texts);
  try {
    const r = formatFile(t);
    if (r.problems.length) {
      refused++;
      (reasons[String(r.problems[0].slots.reason)] ??= []).push(i);
    } else if (r.text !== t) changed++;
    const tree = parseFile(t);
    if (printFile(tree) !== t) console.log("PRINT", i);
    for (const b of tree.blocks) for (const l of b.lanes) {
      let last2 = -1;
      for (const leaf of leavesOfLane(tree, b, l)) {
        if (leaf.start < last2) console.log("ORDER", i);
        last2 = leaf.end;
        if (t.slice(leaf.start, leaf.end) !== leaf.text) console.log("LEAF", i, JSON.stringify(leaf), JSON.stringify(t.slice(leaf.start, leaf.end)));
      }
    }
  } catch (e) {
    console.log("THROW", i, e.stack?.slice(0, 300));
  }
}
console.log(to - from + 1, "refused", refused, "changed", changed, Math.round(performance.now() - s) + "ms");
for (const [k, v] of Object.entries(reasons)) console.log(v.length, k, v.slice(0, 12).join(" "));
/*! Bundled license information:

lodash-es/lodash.js:
  (**
   * @license
   * Lodash (Custom Build) <https://lodash.com/>
   * Build: `lodash modularize exports="es" -o ./`
   * Copyright OpenJS Foundation and other contributors <https://openjsf.org/>
   * Released under MIT license <https://lodash.com/license>
   * Based on Underscore.js 1.8.3 <http://underscorejs.org/LICENSE>
   * Copyright Jeremy Ashkenas, DocumentCloud and Investigative Reporters & Editors
   *)
*/
